mainbore_add_tests(work
  work/cautions_test.cpp
  work/clears_test.cpp
  work/materials_test.cpp
  work/own_words_test.cpp
  work/record_test.cpp
  work/steps_test.cpp
  work/wording_test.cpp)
