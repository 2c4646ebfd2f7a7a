# Tests that need data which is not part of the project print "[skipped]" where it is absent.
add_executable(test_tables tables/csv_test.cpp tables/order_map_test.cpp tables/order_table_test.cpp
                           tables/columns_report_test.cpp tables/open_data_test.cpp)
target_link_libraries(test_tables PRIVATE mainbore_test_main)
catch_discover_tests(test_tables TEST_PREFIX "tables: " PROPERTIES SKIP_REGULAR_EXPRESSION "\\[skipped\\]")
