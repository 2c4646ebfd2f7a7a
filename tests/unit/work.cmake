mainbore_add_tests(work
  work/cautions_test.cpp
  work/clears_test.cpp
  work/load_list_test.cpp
  work/own_words_test.cpp
  work/record_test.cpp
  work/steps_test.cpp
  work/finding_words_test.cpp)
