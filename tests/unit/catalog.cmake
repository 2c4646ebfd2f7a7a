mainbore_add_tests(catalog
  catalog/class_words_test.cpp catalog/faulty_files_test.cpp catalog/published_tables_test.cpp
  catalog/service_tables_test.cpp catalog/tables_test.cpp)
