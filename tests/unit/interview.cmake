mainbore_add_tests(interview
  interview/answers_test.cpp
  interview/interview_test.cpp
  interview/questions_test.cpp
  interview/readings_asked_test.cpp
  interview/spoken_test.cpp
  interview/written_job_test.cpp)
