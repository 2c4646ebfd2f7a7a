/* A C89 program that uses the C interface. */
#include <mainbore.h>
#include <stdio.h>
#include <string.h>

static int failures = 0;

#define CHECK(condition) \
  do { \
    if (!(condition)) { \
      printf("%s:%d: not so: %s\n", __FILE__, __LINE__, #condition); \
      ++failures; \
    } \
  } while (0)

static const char job[] =
    "{\"id\": \"AV-1\", \"main\": {\"material\": \"ductile iron\", \"size\": \"8 in\", \"pressure\": \"82 psi\"},"
    " \"service\": {\"size\": \"1 in\"}}";

static int has(const char* text, const char* part) { return text != NULL && strstr(text, part) != NULL; }

static mainbore_planner* planner_under(const char* rules) {
  mainbore_planner* planner = NULL;
  char* result = NULL;
  mainbore_text file;
  file.name = "own.json";
  file.bytes = rules;
  file.size = rules == NULL ? 0 : strlen(rules);
  CHECK(mainbore_planner_new(&file, rules == NULL ? 0 : 1, NULL, 0, NULL, &planner, &result) == MAINBORE_GO);
  CHECK(result == NULL);
  return planner;
}

static void plan_one_job(const mainbore_planner* planner) {
  static const struct {
    unsigned what;
    const char* holds;
  } asked[] = {{MAINBORE_VERDICT, "\"verdict\":\"hold\""},
               {MAINBORE_PLAN, "\"verdict\": \"hold\""},
               {MAINBORE_PLAN | MAINBORE_SI | MAINBORE_ONE_LINE, "\"unit\":\"kPa\""},
               {MAINBORE_DECISIONS | MAINBORE_ONE_LINE, "\"verdict\":\"hold\""},
               {MAINBORE_CARD, "HOLD - do not cut until every hold is cleared"},
               {MAINBORE_CARD_FULL | MAINBORE_US, "STOP NUMBERS"},
               {MAINBORE_CARD | MAINBORE_SPANISH, "ESPERE (HOLD)"},
               {MAINBORE_SHEET, "<!DOCTYPE html>"}};
  size_t i;
  for (i = 0; i < sizeof asked / sizeof asked[0]; ++i) {
    char* result = NULL;
    CHECK(mainbore_plan(planner, job, strlen(job), asked[i].what, &result) == MAINBORE_HOLD);
    if (!has(result, asked[i].holds)) printf("no %s in %.400s\n", asked[i].holds, result == NULL ? "nothing" : result);
    CHECK(has(result, asked[i].holds));
    mainbore_free(result);
  }
}

/* Every fault at once, each with its place. */
static void name_every_fault(const mainbore_planner* planner) {
  static const char broken[] = "{\"main\": {\"material\": \"ductile irn\",\n \"size\": \"8 psi\"}}";
  char* result = NULL;
  CHECK(mainbore_plan(planner, broken, strlen(broken), MAINBORE_PLAN, &result) == MAINBORE_UNREADABLE);
  CHECK(has(result,
            "\"code\":\"job.unknown-value\",\"file\":\"job\",\"line\":1,\"column\":23,\"path\":\"/main/material\""));
  CHECK(has(result, "\"path\":\"/main/size\""));
  CHECK(has(result, "\"line\":2"));
  mainbore_free(result);
}

static void refuse_rules_that_cannot_be(void) {
  static const char rules[] = "{\"presure\": {}}";
  mainbore_planner* planner = NULL;
  char* result = NULL;
  mainbore_text file;
  mainbore_text settings;
  file.name = "own.json";
  file.bytes = rules;
  file.size = strlen(rules);
  CHECK(mainbore_planner_new(&file, 1, NULL, 0, NULL, &planner, &result) == MAINBORE_UNREADABLE);
  CHECK(planner == NULL);
  CHECK(has(result, "\"file\":\"own.json\""));
  mainbore_free(result);

  /* Rules that settings name must not be lost silently. */
  settings.name = "settings.json";
  settings.bytes = "{\"rules\": [\"missing.json\"]}";
  settings.size = strlen(settings.bytes);
  CHECK(mainbore_planner_new(NULL, 0, NULL, 0, &settings, &planner, &result) == MAINBORE_UNREADABLE);
  CHECK(has(result, "settings.rules-not-given"));
  mainbore_free(result);

  /* Nor may an approved list: a plan without it could go where the command holds. */
  settings.bytes = "{\"approved\": \"approved.csv\"}";
  settings.size = strlen(settings.bytes);
  CHECK(mainbore_planner_new(NULL, 0, NULL, 0, &settings, &planner, &result) == MAINBORE_UNREADABLE);
  CHECK(has(result, "settings.approved-not-given"));
  mainbore_free(result);

  file.name = "ours.json";
  file.bytes = "nonsense";
  file.size = strlen(file.bytes);
  CHECK(mainbore_planner_new(NULL, 0, &file, 1, NULL, &planner, &result) == MAINBORE_UNREADABLE);
  CHECK(has(result, "data.unreadable"));
  mainbore_free(result);
}

static void apply_settings(void) {
  mainbore_planner* planner = NULL;
  char* result = NULL;
  mainbore_text settings;
  settings.name = "settings.json";
  settings.bytes = "{\"format\": 1, \"units\": \"si\", \"crew\": \"North yard\"}";
  settings.size = strlen(settings.bytes);
  CHECK(mainbore_planner_new(NULL, 0, NULL, 0, &settings, &planner, &result) == MAINBORE_GO);
  CHECK(mainbore_plan(planner, job, strlen(job), MAINBORE_PLAN | MAINBORE_ONE_LINE, &result) == MAINBORE_HOLD);
  CHECK(has(result, "North yard"));
  CHECK(has(result, "\"unit\":\"kPa\""));
  mainbore_free(result);
  mainbore_planner_free(planner);
}

static const char approved_list[] =
    "kind,main,od_from,od_to,size,thread,rating,length,stock\n"
    "stop,,,,1 in,AWWA taper,150 psi,3.5 in,12-004\n";

static mainbore_text named(const char* name, const char* bytes) {
  mainbore_text text;
  text.name = name;
  text.bytes = bytes;
  text.size = strlen(bytes);
  return text;
}

/* The plan under a list, with settings or without. */
static void expect_of_list(const mainbore_text* settings, const mainbore_text* approved, const char* part) {
  mainbore_inputs inputs;
  mainbore_planner* planner = NULL;
  char* result = NULL;
  memset(&inputs, 0, sizeof inputs);
  inputs.size = sizeof inputs;
  inputs.settings = settings;
  inputs.approved = approved;
  CHECK(mainbore_planner_from(&inputs, &planner, &result) == MAINBORE_GO);
  CHECK(mainbore_plan(planner, job, strlen(job), MAINBORE_PLAN | MAINBORE_ONE_LINE, &result) == MAINBORE_HOLD);
  CHECK(has(result, "\"stock\":\"12-004\""));
  if (!has(result, part)) printf("no %s\n", part);
  CHECK(has(result, part));
  mainbore_free(result);
  mainbore_planner_free(planner);
}

static void choose_from_approved_fittings(void) {
  mainbore_text list = named("lists/approved.csv", approved_list);
  mainbore_text settings = named("truck/settings.json", "{\"approved\": \"approved.csv\"}");
  mainbore_inputs inputs;
  mainbore_planner* planner = NULL;
  char* result = NULL;
  expect_of_list(NULL, &list, "\"file\":\"lists/approved.csv\"");
  /* Under the name that the settings give it is theirs; another goes before. */
  expect_of_list(&settings, &list, "\"set_aside\":[\"approved\"]");
  list.name = "approved.csv";
  expect_of_list(&settings, &list, "\"file\":\"truck/approved.csv\"");
  expect_of_list(&settings, &list, "{\"path\":\"approved\",\"value\":\"approved.csv\"}");

  memset(&inputs, 0, sizeof inputs);
  inputs.approved = &list;
  CHECK(mainbore_planner_from(&inputs, &planner, &result) == MAINBORE_USAGE); /* no size */
  mainbore_free(result);
  inputs.size = sizeof inputs;
  list = named("approved.csv", "kind,sise\nstop,1 in\n");
  CHECK(mainbore_planner_from(&inputs, &planner, &result) == MAINBORE_UNREADABLE && planner == NULL);
  CHECK(has(result, "\"code\":\"approved."));
  CHECK(has(result, "\"file\":\"approved.csv\",\"line\":1"));
  mainbore_free(result);
  list.bytes = NULL;
  CHECK(mainbore_planner_from(&inputs, &planner, &result) == MAINBORE_USAGE);
  mainbore_free(result);
  CHECK(mainbore_planner_from(NULL, &planner, &result) == MAINBORE_USAGE);
  mainbore_free(result);
}

struct received {
  size_t lines;
  int stop_after;
  char first[2000];
};

static int receive(void* context, const char* records, size_t size) {
  struct received* got = context;
  size_t i;
  if (got->lines == 0 && size < sizeof got->first) memcpy(got->first, records, size);
  for (i = 0; i < size; ++i) got->lines += records[i] == '\n';
  return got->stop_after;
}

static void plan_many(const mainbore_planner* planner) {
  static const char orders[] =
      "{\"id\": \"A\", \"main\": {\"material\": \"PVC\", \"size\": \"6 in\", \"pressure\": \"60 psi\"}, \"service\": "
      "{\"size\": \"1 in\"}}\n"
      "{\"id\": \"B\"}\n"
      "{\"id\": \"C\", \"main\": {\"material\": \"PVC\", \"size\": \"6 in\", \"pressure\": \"60 psi\", \"carries\": "
      "\"reclaimed water\"},"
      " \"service\": {\"size\": \"1 in\"}}\n";
  mainbore_batch_options options;
  mainbore_tally tally;
  mainbore_tally text_tally;
  struct received got;
  char* records = NULL;
  char* result = NULL;
  memset(&options, 0, sizeof options);
  memset(&got, 0, sizeof got);
  options.rows_before = 10;
  options.lines_before = 10;
  CHECK(mainbore_batch(planner, orders, strlen(orders), &options, receive, &got, &tally, &result) ==
        MAINBORE_UNREADABLE);
  CHECK(result == NULL);
  CHECK(got.lines == 3);
  CHECK(tally.unreadable == 1 && tally.no_go == 1 && tally.go + tally.hold == 1 && tally.internal == 0);
  CHECK(has(got.first, "{\"row\":11,\"line\":11,\"id\":\"A\""));
  CHECK(has(got.first, "{\"row\":12,\"line\":12,\"id\":\"B\",\"verdict\":\"unreadable\""));

  memset(&text_tally, 0, sizeof text_tally);
  CHECK(mainbore_batch_text(planner, orders, strlen(orders), &options, &text_tally, &records, &result) ==
        MAINBORE_UNREADABLE);
  CHECK(result == NULL && memcmp(&tally, &text_tally, sizeof tally) == 0);
  CHECK(records != NULL && strcmp(records, got.first) == 0);
  mainbore_free(records);
  CHECK(mainbore_batch_text(planner, "", 0, NULL, NULL, &records, &result) == MAINBORE_GO);
  CHECK(records != NULL && records[0] == '\0');
  mainbore_free(records);

  memset(&got, 0, sizeof got);
  got.stop_after = 1;
  CHECK(mainbore_batch(planner, orders, strlen(orders), NULL, receive, &got, NULL, &result) == MAINBORE_STOPPED);

  memset(&got, 0, sizeof got);
  CHECK(mainbore_batch(planner, "id,main.sise\nA,8 in\n", 20, NULL, receive, &got, NULL, &result) ==
        MAINBORE_UNREADABLE);
  CHECK(got.lines == 0);
  CHECK(has(result, "\"faults\":[{"));
  mainbore_free(result);
  CHECK(mainbore_batch_text(planner, "id,main.sise\nA,8 in\n", 20, NULL, NULL, &records, &result) ==
        MAINBORE_UNREADABLE);
  CHECK(records == NULL && has(result, "\"faults\":[{"));
  mainbore_free(result);
}

static void refuse_calls_without_sense(const mainbore_planner* planner) {
  mainbore_planner* other = NULL;
  char* records = NULL;
  char* result = NULL;
  CHECK(mainbore_plan(NULL, job, strlen(job), MAINBORE_PLAN, &result) == MAINBORE_USAGE);
  CHECK(has(result, "call.wrong-usage"));
  mainbore_free(result);
  CHECK(mainbore_plan(planner, NULL, 1, MAINBORE_PLAN, &result) == MAINBORE_USAGE);
  mainbore_free(result);
  CHECK(mainbore_plan(planner, job, strlen(job), 99, &result) == MAINBORE_USAGE);
  mainbore_free(result);
  CHECK(mainbore_plan(planner, job, strlen(job), MAINBORE_US | MAINBORE_SI, &result) == MAINBORE_USAGE);
  mainbore_free(result);
  CHECK(mainbore_plan(planner, job, strlen(job), MAINBORE_PLAN, NULL) == MAINBORE_USAGE);
  CHECK(mainbore_batch(planner, "", 0, NULL, NULL, NULL, NULL, &result) == MAINBORE_USAGE);
  mainbore_free(result);
  CHECK(mainbore_batch_text(planner, "", 0, NULL, NULL, NULL, &result) == MAINBORE_USAGE);
  mainbore_free(result);
  CHECK(mainbore_batch_text(NULL, "", 0, NULL, NULL, &records, &result) == MAINBORE_USAGE && records == NULL);
  mainbore_free(result);
  CHECK(mainbore_batch_text(planner, "", 0, NULL, NULL, &records, NULL) == MAINBORE_USAGE && records == NULL);
  CHECK(mainbore_planner_new(NULL, 0, NULL, 0, NULL, NULL, &result) == MAINBORE_USAGE);
  mainbore_free(result);
  CHECK(mainbore_planner_new(NULL, 1, NULL, 0, NULL, &other, &result) == MAINBORE_USAGE && other == NULL);
  mainbore_free(result);
  CHECK(mainbore_plan(planner, NULL, 0, MAINBORE_PLAN, &result) == MAINBORE_UNREADABLE);
  mainbore_free(result);
  mainbore_free(NULL);
  mainbore_planner_free(NULL);
}

int main(void) {
  mainbore_planner* planner = planner_under(NULL);
  CHECK(strlen(mainbore_version()) >= 5);
  plan_one_job(planner);
  name_every_fault(planner);
  plan_many(planner);
  refuse_calls_without_sense(planner);
  mainbore_planner_free(planner);
  mainbore_planner_free(planner_under("{\"name\": \"Ashby Vale\", \"pressure\": {\"wet_tap_limit\": \"150 psi\"}}"));
  refuse_rules_that_cannot_be();
  apply_settings();
  choose_from_approved_fittings();
  return failures == 0 ? 0 : 1;
}
