# The report of a week of orders, included by the list of this room.
target_sources(mainbore PRIVATE ${CMAKE_CURRENT_LIST_DIR}/week.cpp ${CMAKE_CURRENT_LIST_DIR}/week_order.cpp)
