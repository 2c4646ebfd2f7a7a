# The command that writes JSON Schemas.
target_sources(mainbore_cli PRIVATE ${CMAKE_CURRENT_LIST_DIR}/schema_command.cpp)
