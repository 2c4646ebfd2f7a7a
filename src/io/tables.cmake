# Tables of orders, included by the list of this room.
target_sources(mainbore PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/csv.cpp
  ${CMAKE_CURRENT_LIST_DIR}/order_map.cpp
  ${CMAKE_CURRENT_LIST_DIR}/order_table.cpp
  ${CMAKE_CURRENT_LIST_DIR}/columns_report.cpp)
