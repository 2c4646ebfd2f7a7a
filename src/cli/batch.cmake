# The command for many orders.
target_sources(mainbore_cli PRIVATE ${CMAKE_CURRENT_LIST_DIR}/batch_command.cpp ${CMAKE_CURRENT_LIST_DIR}/result_writer.cpp)
