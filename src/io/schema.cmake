# JSON Schemas of what is read and written.
target_sources(mainbore PRIVATE ${CMAKE_CURRENT_LIST_DIR}/schema.cpp ${CMAKE_CURRENT_LIST_DIR}/plan_schema.cpp)
