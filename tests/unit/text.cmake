mainbore_add_tests(text text/foreign_test.cpp)
