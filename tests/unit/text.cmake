mainbore_add_tests(text text/foreign_test.cpp text/sha256_test.cpp)
