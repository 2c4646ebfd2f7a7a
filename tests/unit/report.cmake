mainbore_add_tests(report
  report/text_page_test.cpp
  report/text_test.cpp)
