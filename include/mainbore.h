/* The C interface: plan taps from C, or from any language that can call C.
 *
 *     mainbore_planner *planner = NULL;
 *     char *result = NULL;
 *     if (mainbore_planner_new(NULL, 0, NULL, 0, NULL, &planner, &result) == MAINBORE_GO) {
 *       int status = mainbore_plan(planner, job, strlen(job), MAINBORE_PLAN, &result);
 *       puts(result);
 *       mainbore_free(result);
 *     }
 *     mainbore_planner_free(planner);
 *
 * Link with -lmainbore (pkg-config mainbore). This header is C89 and C++. What a job, rules, settings and a plan look like
 * stands in docs/job.md, rules.md, settings.md and plan.md; results have the same bytes as those of the command.
 *
 * Texts are UTF-8 of the size given; they need no NUL behind them, are only read, and belong to the caller, who may free
 * them when the call returns. A result that is handed out through a `char **` ends with a NUL and belongs to the caller, who
 * frees it with mainbore_free() and nothing else. Every call that takes one sets it: to NULL where there is nothing to say,
 * which includes a want of memory.
 *
 * Threads: a planner never changes. Any number of threads may plan with one at the same time, each with results of its own.
 * It must not be freed before the last of them returns.
 *
 * No C++ exception leaves the library, nothing is printed, no file is opened, and no network is asked. Statuses are the exit
 * statuses of the command. A status other than a verdict comes with JSON that lists every fault found:
 *
 *     {"faults":[{"code":"job.unknown-value","file":"job","line":3,"column":19,"path":"/main/material",
 *                 "message":"...","help":"...","excerpt":"...","text":"..."}]}
 *
 * `text` is the fault as the command prints it. What is not known is left out.
 */
#ifndef MAINBORE_H
#define MAINBORE_H

#include <stddef.h>

#ifdef __cplusplus
extern "C" {
#endif

#if defined(__GNUC__)
#define MAINBORE_API __attribute__((visibility("default")))
#else
#define MAINBORE_API
#endif

/* What a call returns. Only the first three are verdicts; of a batch, the worst of its orders. */
#define MAINBORE_GO 0
#define MAINBORE_NO_GO 1
#define MAINBORE_UNREADABLE 2 /* a text that cannot be read: the result lists every fault */
#define MAINBORE_HOLD 3
#define MAINBORE_USAGE 64    /* the call itself makes no sense: a null, a number that is not listed here */
#define MAINBORE_INTERNAL 70 /* a fault of the library, or no memory */
#define MAINBORE_STOPPED 74  /* the receiver of a batch asked for no more */

/* The version of the library that is running, such as "0.1.0". Never freed. */
MAINBORE_API const char* mainbore_version(void);

/* Frees a result. NULL is allowed. */
MAINBORE_API void mainbore_free(char* result);

/* A text with its name: of a file, as faults name it. */
typedef struct mainbore_text {
  const char* name;  /* NUL at its end */
  const char* bytes; /* UTF-8 */
  size_t size;
} mainbore_text;

/* Tables, rules, settings and approved list, read and checked once. */
typedef struct mainbore_planner mainbore_planner;

/* What a planner is made from. Set all of it to zero, then `size`, then what there is. */
typedef struct mainbore_inputs {
  size_t size; /* sizeof(mainbore_inputs): tells the library which edition of this header it is called by */
  /* Files of a utility's own, laid over the default rules in their order. */
  const mainbore_text* rules;
  size_t rules_count;
  /* Every file of a folder of tables in place of those built in, each named by its path there ("pipes/ductile_iron.json");
   * NULL and 0 for those built in. */
  const mainbore_text* data;
  size_t data_count;
  /* One settings file, or NULL. What it names is not opened: each of its rules must be among `rules`, under that very name,
   * and is laid before the others; its approved list is refused unless `approved` is given. */
  const mainbore_text* settings;
  /* The utility's approved fittings (docs/approved.md), JSON or CSV, or NULL. Under the very name that the settings give, it
   * is theirs; under any other, it is taken in place of theirs. */
  const mainbore_text* approved;
} mainbore_inputs;

/* Makes a planner.
 *
 * Returns MAINBORE_GO and sets `planner`, to be freed with mainbore_planner_free(); or MAINBORE_UNREADABLE, with every
 * fault of the texts in `result` and a null planner. */
MAINBORE_API int mainbore_planner_from(const mainbore_inputs* inputs, mainbore_planner** planner, char** result);

/* The same without an approved list. */
MAINBORE_API int mainbore_planner_new(const mainbore_text* rules, size_t rules_count, const mainbore_text* data,
                                      size_t data_count, const mainbore_text* settings, mainbore_planner** planner,
                                      char** result);

/* Frees a planner. NULL is allowed. */
MAINBORE_API void mainbore_planner_free(mainbore_planner* planner);

/* What is asked for: one of these, */
#define MAINBORE_VERDICT 0u   /* the verdict in a line of JSON, as `mainbore batch --format ndjson` writes it */
#define MAINBORE_PLAN 1u      /* the whole plan as JSON: `mainbore plan --format json` */
#define MAINBORE_DECISIONS 2u /* the plan without the words a crew works by: `batch --decisions` */
#define MAINBORE_CARD 3u      /* the card as plain text: `mainbore plan` */
#define MAINBORE_CARD_FULL 4u /* with reasons, load list and the order of work: `plan --full` */
#define MAINBORE_SHEET 5u     /* the field sheet, a page of HTML: `plan --format html` */
/* and any of these added to it. Where units or language are not asked for, those of the settings hold, else US, English. */
#define MAINBORE_US 0x100u
#define MAINBORE_SI 0x200u
#define MAINBORE_ENGLISH 0x400u
#define MAINBORE_SPANISH 0x800u   /* of what is for people to read */
#define MAINBORE_ONE_LINE 0x1000u /* JSON without line breaks */
#define MAINBORE_NO_ROWS 0x2000u  /* records without row and line */

/* Plans one job. `job` is a job file. Returns the verdict, with what was asked for in `result`; or MAINBORE_UNREADABLE with
 * every fault of the job. A verdict alone takes a few microseconds, a plan some tens, a page more. */
MAINBORE_API int mainbore_plan(const mainbore_planner* planner, const char* job, size_t size, unsigned what,
                               char** result);

/* How the orders of a batch are written. */
#define MAINBORE_ANY 0    /* found from the first bytes */
#define MAINBORE_NDJSON 1 /* a job a line */
#define MAINBORE_JSON 2   /* an array of jobs */
#define MAINBORE_CSV 3    /* a table with a header */
#define MAINBORE_GEOJSON 4

/* The orders of a batch by how they ended. */
typedef struct mainbore_tally {
  unsigned long go;
  unsigned long hold;
  unsigned long office; /* of the holds, those that wait for the office */
  unsigned long no_go;
  unsigned long unreadable; /* those that met a fault of the library among them */
  unsigned long internal;
} mainbore_tally;

/* How a batch is done. All zero is a good choice. */
typedef struct mainbore_batch_options {
  int in;                    /* MAINBORE_ANY ... */
  unsigned what;             /* MAINBORE_VERDICT, PLAN or DECISIONS, and units and NO_ROWS added to it */
  int jobs;                  /* threads; 0 and 1: the calling one alone */
  unsigned long rows_before; /* orders of the same stream in calls before this one */
  unsigned long lines_before;
} mainbore_batch_options;

/* Receives records in the order of the orders: whole lines of JSON, one an order, some dozens at a time. `records` lasts
 * until it returns. It is called from one thread at a time, which with several `jobs` need not be the caller's. It returns 0
 * to go on; anything else ends the batch. */
typedef int (*mainbore_receiver)(void* context, const char* records, size_t size);

/* Plans many orders. One that cannot be read is a record that says so, in its place. `options` and `tally` may be NULL.
 * Returns the worst of the orders (UNREADABLE, NO_GO, HOLD, GO; INTERNAL before all), with NULL in `result`; STOPPED where
 * the receiver ended it; or UNREADABLE with faults in `result` where a table's header cannot be used. */
MAINBORE_API int mainbore_batch(const mainbore_planner* planner, const char* orders, size_t size,
                                const mainbore_batch_options* options, mainbore_receiver receiver, void* context,
                                mainbore_tally* tally, char** result);

/* The same without a receiver: all records in one text, `records`, which belongs to the caller like a result. For some
 * hundreds of orders at a time, and for languages to which a call back is dear. `records` is NULL where a batch says
 * nothing of its orders: with a fault in `result`, or a want of memory. */
MAINBORE_API int mainbore_batch_text(const mainbore_planner* planner, const char* orders, size_t size,
                                     const mainbore_batch_options* options, mainbore_tally* tally, char** records,
                                     char** result);

#ifdef __cplusplus
}
#endif

#endif
