mainbore_add_tests(tools
  tools/identify_test.cpp
  tools/pocket_table_test.cpp
  tools/report_test.cpp
  tools/trial_taps_test.cpp
  tools/what_if_test.cpp)
