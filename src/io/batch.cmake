# Orders read at speed and verdicts a line each, included by the list of this room.
target_sources(mainbore PRIVATE ${CMAKE_CURRENT_LIST_DIR}/fast_job.cpp ${CMAKE_CURRENT_LIST_DIR}/verdict_record.cpp)
