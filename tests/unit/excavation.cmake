mainbore_add_tests(excavation
  excavation/pit_test.cpp
  excavation/slope_test.cpp
  excavation/soil_test.cpp
  excavation/thresholds_test.cpp
  excavation/traffic_test.cpp)
