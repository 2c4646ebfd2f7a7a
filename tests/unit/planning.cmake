mainbore_add_tests(planning planning/resolve_test.cpp planning/identity_test.cpp planning/method_test.cpp planning/pressure_test.cpp
                            planning/machine_test.cpp planning/place_test.cpp planning/property_test.cpp
                            planning/reach_test.cpp
                            planning/service_test.cpp planning/stop_numbers_test.cpp planning/cleaning_test.cpp
                            planning/pit_test.cpp planning/utility_test.cpp planning/permissions_test.cpp planning/main_filter_test.cpp planning/rules_water_test.cpp
                            planning/plannable_test.cpp planning/planner_test.cpp planning/rules_bite_test.cpp
                            planning/reading_property_test.cpp planning/far_wall_test.cpp
                            planning/approved_test.cpp planning/service_rules_test.cpp)
