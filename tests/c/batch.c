/* Plans the orders on standard input, a line each, with one call: what `mainbore batch - --in ndjson --format ndjson` does. */
#include <mainbore.h>
#include <stdio.h>
#include <stdlib.h>

static int print(void* context, const char* records, size_t size) { return fwrite(records, 1, size, context) != size; }

int main(void) {
  size_t room = 1 << 20;
  size_t size = 0;
  size_t got;
  char* orders = malloc(room);
  char* result = NULL;
  mainbore_planner* planner = NULL;
  mainbore_batch_options options = {MAINBORE_NDJSON, MAINBORE_VERDICT, 1, 0, 0};
  int status;
  while (orders != NULL && (got = fread(orders + size, 1, room - size, stdin)) > 0) {
    size += got;
    if (size == room) {
      char* more = realloc(orders, room *= 2);
      if (more == NULL) free(orders);
      orders = more;
    }
  }
  if (orders == NULL) return MAINBORE_INTERNAL;
  status = mainbore_planner_new(NULL, 0, NULL, 0, NULL, &planner, &result);
  if (status == MAINBORE_GO) status = mainbore_batch(planner, orders, size, &options, print, stdout, NULL, &result);
  if (result != NULL) fputs(result, stderr);
  mainbore_free(result);
  mainbore_planner_free(planner);
  free(orders);
  return status;
}
