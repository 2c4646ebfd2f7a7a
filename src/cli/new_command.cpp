#include "cli/new_command.hpp"

#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>

#include "cli/result_writer.hpp"
#include "cli/signals.hpp"
#include "interview/interview.hpp"
#include "report/card.hpp"
#include "words/asking.hpp"

namespace mainbore::cli {
namespace {

namespace fs = std::filesystem;
using words::AskWord;

void require_terminal(const Console& console) {
  if (console.environment.in_is_terminal && console.environment.err_is_terminal) return;
  throw Stop(exit_usage,
             "new asks its questions on a terminal, and this is none\n"
             "write the job file by hand (docs/job.md, mainbore schema job), or give the facts to plan:\n"
             "mainbore plan --set main.material=\"ductile iron\" --set main.size=\"8 in\" ...");
}

void require_place(const NewRequest& request) {
  const std::string& job = request.job;
  if (job.empty() || job == "-") {
    throw Stop(exit_usage, "no file: name the job file to write\ntry: mainbore new job.json");
  }
  std::error_code error;
  if (fs::is_directory(job, error))
    throw Stop(exit_no_output, "cannot write " + shown_name(job) + ": it is a directory");
  if (fs::exists(fs::symlink_status(job, error)) && !request.replace) {
    throw Stop(exit_no_output, shown_name(job) + " is there already: name another file, or say --replace");
  }
}

// Before the first question rather than after the last. What can still go wrong then is reported then.
void require_writable(const std::string& job) {
  const fs::path folder = fs::path(job).parent_path();
  if (::access(folder.empty() ? "." : folder.c_str(), W_OK | X_OK) == 0) return;
  throw Stop(exit_no_output, "cannot write " + shown_name(job) + ": " + std::strerror(errno));
}

// What was told is not lost with the file.
void write_job(const NewRequest& request, const std::string& text, Console& console) {
  const SignalsHeld held;
  try {
    require_place(request);  // somebody else may have written it meanwhile
    const auto over = request.replace ? Replacement::Over::file : Replacement::Over::nothing;
    ResultWriter result(console, over);
    result.write(text);
    result.finish();
  } catch (const Stop& stop) {
    throw Stop(stop.status(), std::string(stop.what()) + "\nthe job stands above, to be copied into another file");
  }
}

}  // namespace

ExitStatus new_command(const NewRequest& request, Console& console) {
  require_terminal(console);
  require_place(request);
  require_writable(request.job);
  console.output = request.job;
  SettingsInForce in_force(request.settings_file, UsersOwn::read, Catalog::builtin(), console);
  const Language language = in_force.language(request.language, true);
  const Planner planner(in_force.rules(Catalog::builtin(), {}, console));

  if (language != Language::english) console.err << report::translation_line(in_force.taken(), language) << '\n';
  const auto facts = interview::interview(console.in, console.err, request.job, planner, language);
  if (!facts) throw Stop(exit_stopped, std::string(say(AskWord::stopped, language)));
  write_job(request, settings_to_json(*facts, planner.catalog()), console);
  console.err << '\n'
              << say(AskWord::written, language, {{"file", shown_name(request.job)}}) << '\n'
              << interview::closing_words(*facts, request.job, language);
  return exit_go;
}

}  // namespace mainbore::cli
