# Reports of identify, what-if, trial taps and the pocket table.
target_sources(mainbore PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/identify_text.cpp
  ${CMAKE_CURRENT_LIST_DIR}/pocket_table_html.cpp
  ${CMAKE_CURRENT_LIST_DIR}/pocket_table_text.cpp
  ${CMAKE_CURRENT_LIST_DIR}/pocket_words.cpp
  ${CMAKE_CURRENT_LIST_DIR}/trial_taps_text.cpp
  ${CMAKE_CURRENT_LIST_DIR}/what_if_text.cpp)
