mainbore_add_tests(hydraulics
  hydraulics/demand_test.cpp
  hydraulics/equal_capacity_test.cpp
  hydraulics/friction_test.cpp
  hydraulics/minor_loss_test.cpp
  hydraulics/open_jet_test.cpp
  hydraulics/service_line_test.cpp
  hydraulics/water_test.cpp)
