// Where the result goes: streams that fail, files replaced whole or not at all.
#include <sys/stat.h>

#include <algorithm>
#include <filesystem>
#include <thread>

#include "cli/program_run.hpp"
#include "support/catch.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

const std::string job = std::string(MAINBORE_SOURCE_DIR) + "/examples/jobs/ductile_iron_direct.json";
const std::string table =
    "id,main.material,main.size,main.pressure,service.size\n"
    "A,PVC,6 in,60 psi,1 in\n";

}  // namespace

TEST_CASE("a result file holds what standard output would") {
  const Folder folder;
  const Ran shown = run({"plan", job});
  const Ran written = run({"plan", job, "-o", folder / "plan.txt"});
  CHECK(written.status == shown.status);
  CHECK(written.out.empty());
  CHECK(content(folder / "plan.txt") == shown.out);
  CHECK(folder.files() == 1);  // no temporary is left
  CHECK(run({"plan", job, "--units", "si", "-o", folder / "plan.txt"}).status == shown.status);
  CHECK(content(folder / "plan.txt") == run({"plan", job, "--units", "si"}).out);
}

TEST_CASE("a file is not touched when there is no result") {
  const Folder folder;
  std::ofstream(folder / "plan.txt") << "yesterday's";
  CHECK(run({"plan", "--set", "main.size=8", "-o", folder / "plan.txt"}).status == 2);
  CHECK(content(folder / "plan.txt") == "yesterday's");
  CHECK(folder.files() == 1);
}

TEST_CASE("a place that cannot be written to is a status of its own") {
  const Folder folder;
  const Ran ran = run({"plan", job, "-o", folder / "missing/plan.txt"});
  CHECK(ran.status == 74);
  CHECK(ran.out.empty());
  CHECK(ran.err.starts_with("mainbore: cannot write"));

  std::istringstream in;
  std::ostringstream out;
  std::ostringstream err;
  out.setstate(std::ios::badbit);
  CHECK(cli::run(std::vector<std::string>{"plan", job}, in, out, err, {}) == 74);
}

TEST_CASE("color only on a terminal, without NO_COLOR, and never in a file") {
  const Folder folder;
  const auto colored = [](const std::string& text) { return text.find('\x1b') != std::string::npos; };
  CHECK_FALSE(colored(run({"plan", job}).out));
  CHECK(colored(run({"plan", job}, {.out_is_terminal = true}).out));
  CHECK_FALSE(colored(run({"plan", job}, {.out_is_terminal = true, .no_color = true}).out));
  CHECK_FALSE(colored(run({"plan", job, "--format", "json"}, {.out_is_terminal = true}).out));
  CHECK(run({"plan", job, "-o", folder / "plan.txt"}, {.out_is_terminal = true}).status == 0);
  CHECK_FALSE(colored(content(folder / "plan.txt")));
}

TEST_CASE("tables of a directory stand in place of those built in") {
  const Folder folder;
  const std::string tables = std::string(MAINBORE_SOURCE_DIR) + "/data";
  CHECK(run({"plan", job, "--data", tables}).out == run({"plan", job}).out);
  CHECK(run({"plan", job, "--data", folder / "none"}).status == 66);
  CHECK(run({"plan", job, "--data", folder / ""}).status == 2);  // a directory without tables
}

TEST_CASE("new writes a job file whole or not at all") {
  const cli::Environment terminal{.in_is_terminal = true, .err_is_terminal = true};
  const std::string enter(80, '\n');
  const Folder folder;
  const std::string file = folder / "job.json";
  CHECK(run({"new", file}, terminal, "AV-1\nhalf a li").status == 130);  // the input ends
  CHECK(run({"new", file}, terminal, "AV-1\nstop\n").status == 130);
  CHECK(run({"new", file}, {}, enter).status == 64);
  CHECK(folder.files() == 0);

  const Ran written = run({"new", file}, terminal, "AV-1\n" + enter);
  CHECK(written.status == 0);
  CHECK(written.out.empty());
  CHECK(content(file) == "{\n  \"id\": \"AV-1\"\n}\n");
  CHECK(folder.files() == 1);

  CHECK(run({"new", file}, terminal, enter).status == 74);
  CHECK(run({"new", file, "--replace"}, terminal, "stop\n").status == 130);
  CHECK(content(file) == "{\n  \"id\": \"AV-1\"\n}\n");
  CHECK(run({"new", file, "--replace"}, terminal, "AV-2\n" + enter).status == 0);
  CHECK(content(file) == "{\n  \"id\": \"AV-2\"\n}\n");
}

TEST_CASE("a link to nowhere is no free place for a job file") {
  const cli::Environment terminal{.in_is_terminal = true, .err_is_terminal = true};
  const Folder folder;
  std::filesystem::create_symlink(folder / "nowhere", folder / "job.json");
  CHECK(run({"new", folder / "job.json"}, terminal, std::string(80, '\n')).status == 74);
}

TEST_CASE("a result does not replace what it is made from") {
  const Folder folder;
  const std::string orders = folder.put("w.csv", table);
  std::filesystem::create_symlink(orders, folder / "soft.csv");
  std::filesystem::create_hard_link(orders, folder / "hard.csv");
  const std::string other = folder.put("other.csv", table);
  for (const std::string& output : {orders, folder / "soft.csv", folder / "hard.csv", folder / "./w.csv"}) {
    INFO(output);
    const Ran ran = run({"batch", other, orders, "--format", "ndjson", "-o", output});
    CHECK(ran.status == 64);
    const std::string same = output == orders ? "" : " (" + output + " is the same file)";
    CHECK(ran.err == "mainbore: the result would replace " + orders + same +
                         ", which is read: give -o another name\nmainbore: " + output + " was not changed\n");
    CHECK(content(orders) == table);
  }
  CHECK(run({"batch", orders, "--columns", "-o", orders}).status == 64);

  const std::string old = folder.put("old.ndjson", "yesterday's");
  CHECK(run({"batch", orders, "--format", "ndjson", "-o", old}).status == 3);
  CHECK(content(old) == run({"batch", orders, "--format", "ndjson"}).out);
  CHECK(run({"batch", orders, "--format", "ndjson", "-o", "/dev/null"}).status == 3);
}

TEST_CASE("a file beside the result that is called like it stays") {
  const Folder folder;
  const std::string own = folder.put("plan.txt.part", "mine");
  CHECK(run({"plan", job, "-o", folder / "plan.txt"}).status == 0);
  CHECK(content(own) == "mine");
  CHECK(folder.files() == 2);
}

TEST_CASE("a failed run says that the old result stays, and of no other") {
  const Folder folder;
  const std::string old = folder.put("plan.txt", "yesterday's");
  const auto told = [](const Ran& ran) { return ran.err.ends_with("plan.txt was not changed\n"); };
  CHECK(told(run({"plan", "--set", "main.size=8", "-o", old})));
  CHECK(told(run({"plan", folder / "missing.json", "-o", old})));
  CHECK(told(run({"plan", job, "-o", old, "--frmat", "html"})));
  CHECK(told(run({"plan", job, "--format", "htm", "-o" + old})));
  CHECK(content(old) == "yesterday's");
  CHECK_FALSE(told(run({"plan", job, "--format", "htm", "-o", folder / "none" + "/plan.txt"})));
  CHECK_FALSE(told(run({"plan", folder / "missing.json", "-o", "/dev/null"})));
  CHECK_FALSE(told(run({"plan", job, "-o", old})));
  CHECK(run({"plan", job, "-o", ""}).status == 64);
}

TEST_CASE("every input is looked at before the first is planned") {
  const Folder folder;
  const std::string orders = folder.put("a.csv", table);
  const std::string missing = folder / "missing.csv";
  const std::string directory = folder / "";
  const Ran ran = run({"batch", orders, missing, orders, directory, "--format", "ndjson"});
  CHECK(ran.status == 66);
  CHECK(ran.out.empty());
  CHECK(ran.err == "mainbore: cannot open " + missing + ": No such file or directory\nmainbore: cannot open " +
                       directory + ": it is a directory\n");
  CHECK(run({"batch", orders, missing, "--columns"}).out.empty());
}

TEST_CASE("a pipe among the inputs is opened once") {
  const Folder folder;
  const std::string orders = folder.put("a.csv", table);
  const std::string pipe = folder / "pipe.csv";
  REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
  std::thread writer([&] { std::ofstream(pipe) << table; });
  const Ran ran = run({"batch", orders, pipe, "--format", "ndjson", "--no-rows"});
  writer.join();
  CHECK(ran.status == 3);
  CHECK(std::count(ran.out.begin(), ran.out.end(), '\n') == 2);
}

TEST_CASE("each input without orders is told and counts") {
  const Folder folder;
  const std::string orders = folder.put("a.csv", table);
  const std::string empty = folder.put("empty.csv", "");
  const std::string header = folder.put("header.csv", table.substr(0, table.find('\n') + 1));
  const std::string list = folder.put("list.json", "[]");
  const Ran ran = run({"batch", orders, empty, header, list, "--format", "ndjson", "--fail-on", "unreadable"});
  CHECK(ran.status == 2);
  CHECK(std::count(ran.out.begin(), ran.out.end(), '\n') == 1);
  std::string told;
  for (const std::string& name : {empty, header, list}) told += "mainbore: no orders were found in " + name + '\n';
  CHECK(ran.err == told);

  const Ran passed = run({"batch", orders, empty, "--format", "ndjson", "--fail-on", "never"});
  CHECK(passed.status == 0);
  CHECK(passed.err.empty());
  CHECK(run({"batch", orders, orders, "--format", "ndjson", "--fail-on", "unreadable"}).status == 0);
}
