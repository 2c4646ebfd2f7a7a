/* One job in, its plan out: cc one_job.c $(pkg-config --cflags --libs mainbore) */
#include <mainbore.h>
#include <stdio.h>
#include <string.h>

int main(void) {
  const char* job =
      "{\"main\": {\"material\": \"ductile iron\", \"size\": \"8 in\", \"pressure\": \"82 psi\"},"
      " \"service\": {\"size\": \"1 in\"}}";
  mainbore_planner* planner = NULL;
  char* result = NULL;
  int status = mainbore_planner_new(NULL, 0, NULL, 0, NULL, &planner, &result);
  if (status == MAINBORE_GO) status = mainbore_plan(planner, job, strlen(job), MAINBORE_CARD, &result);
  if (result != NULL) fputs(result, stdout);
  mainbore_free(result);
  mainbore_planner_free(planner);
  return status;
}
