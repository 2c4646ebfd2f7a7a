mainbore_add_tests(words
  words/words_test.cpp)
