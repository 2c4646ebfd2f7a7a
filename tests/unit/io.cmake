mainbore_add_tests(io
  io/job_fields_test.cpp
  io/job_reader_test.cpp
  io/json_text_test.cpp
  io/nearest_test.cpp
  io/plan_json_test.cpp
  io/same_plan_test.cpp
  io/source_text_test.cpp)
