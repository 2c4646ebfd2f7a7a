mainbore_add_tests(sheet
  sheet/drawing_test.cpp
  sheet/html_writer_test.cpp
  sheet/lines_test.cpp
  sheet/sheet_test.cpp)
