mainbore_add_tests(sanitary
  sanitary/chlorine_test.cpp
  sanitary/flushing_test.cpp
  sanitary/lead_content_test.cpp)
