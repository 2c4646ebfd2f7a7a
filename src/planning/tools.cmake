# Answers put together from many plans.
target_sources(mainbore PRIVATE ${CMAKE_CURRENT_LIST_DIR}/identify.cpp ${CMAKE_CURRENT_LIST_DIR}/pocket_table.cpp
                                ${CMAKE_CURRENT_LIST_DIR}/what_if.cpp)
