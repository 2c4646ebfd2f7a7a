mainbore_add_tests(report
  report/card_test.cpp
  report/crew_words_test.cpp
  report/one_number_test.cpp
  report/evidence_test.cpp
  report/text_page_test.cpp
  report/text_test.cpp)
