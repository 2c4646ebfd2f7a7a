mainbore_add_tests(record
  record/ledger_test.cpp
  record/tap_record_test.cpp)
