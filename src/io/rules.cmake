# The rules reader, included by the list of this room.
target_sources(mainbore PRIVATE ${CMAKE_CURRENT_LIST_DIR}/rules_fields.cpp ${CMAKE_CURRENT_LIST_DIR}/rules_reader.cpp)
