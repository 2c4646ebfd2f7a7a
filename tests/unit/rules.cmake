mainbore_add_tests(rules rules/default_rules_test.cpp rules/utility_rules_test.cpp rules/compare_rules_test.cpp)
