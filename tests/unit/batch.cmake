mainbore_add_tests(batch
  batch/batch_test.cpp
  batch/broken_stream_test.cpp
  batch/fast_job_test.cpp
  batch/order_source_test.cpp
  batch/verdict_record_test.cpp
  batch/week_test.cpp
  ${PROJECT_SOURCE_DIR}/tests/bench/orders.cpp)
