# Commands that answer apart from a job: identify, drytap, table.
target_sources(mainbore_cli PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/drytap_command.cpp
  ${CMAKE_CURRENT_LIST_DIR}/identify_command.cpp
  ${CMAKE_CURRENT_LIST_DIR}/table_command.cpp
  ${CMAKE_CURRENT_LIST_DIR}/tool_values.cpp)
