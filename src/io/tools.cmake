# Field tests in, answers of the smaller tools out.
target_sources(mainbore PRIVATE ${CMAKE_CURRENT_LIST_DIR}/field_tests_reader.cpp
                                ${CMAKE_CURRENT_LIST_DIR}/pocket_table_csv.cpp ${CMAKE_CURRENT_LIST_DIR}/tools_json.cpp)
