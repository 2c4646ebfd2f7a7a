mainbore_add_tests(units units/bounded_list_test.cpp units/measure_test.cpp units/nominal_size_test.cpp
  units/quantity_test.cpp)

# Adding a pressure to a length must not compile; multiplying it by an area must.
function(mainbore_add_compile_test name code expect_failure)
  file(WRITE ${CMAKE_CURRENT_BINARY_DIR}/compile_${name}.cpp
    "#include \"mainbore/nominal_size.hpp\"\n#include \"mainbore/units.hpp\"\nusing namespace mainbore;\n${code}\n")
  add_test(NAME "units: compile ${name}"
    COMMAND ${CMAKE_CXX_COMPILER} -std=c++20 -fsyntax-only -I${PROJECT_SOURCE_DIR}/include
            ${CMAKE_CURRENT_BINARY_DIR}/compile_${name}.cpp)
  set_tests_properties("units: compile ${name}" PROPERTIES WILL_FAIL ${expect_failure})
endfunction()
mainbore_add_compile_test(force_is_pressure_times_area "Force f = (90.0 * units::psi) * (1.0 * units::in2);" OFF)
mainbore_add_compile_test(pressure_plus_length_fails "auto f = (90.0 * units::psi) + (1.0 * units::inch);" ON)
mainbore_add_compile_test(length_is_no_bare_number_fails "Length l = 8.0;" ON)
mainbore_add_compile_test(nominal_size_is_no_length_fails "Length l = NominalSize::inches(6);" ON)
mainbore_add_compile_test(nominal_size_times_length_fails "auto l = NominalSize::inches(6) * units::inch;" ON)
