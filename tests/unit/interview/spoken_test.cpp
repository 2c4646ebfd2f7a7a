// Replies in Spanish: what they mean to a job, and that a job told in either language is the same.
#include "interview/spoken.hpp"

#include <set>

#include "interview/questions.hpp"
#include "support/catch.hpp"
#include "unit/interview/person.hpp"
#include "words/terms.hpp"

using namespace mainbore;
using namespace mainbore::test;
using interview::as_a_job_has_it;

namespace {

const io::JobField& field_at(std::string_view path) { return *io::find_field(path)->field; }

std::string taken(std::string_view answer, std::string_view path) {
  return as_a_job_has_it(answer, field_at(path), Language::spanish);
}

std::string job_told(const Replies& answers, Language language) {
  const Interviewed told = interviewed(answers, "", language);
  REQUIRE(told.facts);
  return settings_to_json(*told.facts, Catalog::builtin());
}

}  // namespace

TEST_CASE("a foreman's Spanish is taken with or without accents, and English as well") {
  CHECK(taken("hierro d\u00factil", "main.material") == "ductile iron");
  CHECK(taken("Hierro ductil", "main.material") == "ductile iron");
  CHECK(taken("HIERRO D\u00daCTIL", "main.material") == "ductile iron");
  CHECK(taken("asbesto-cemento", "main.material") == "asbestos cement");
  CHECK(taken("ductile iron", "main.material") == "ductile iron");
  CHECK(taken("DI", "main.material") == "DI");  // for the reader to know
  CHECK(taken("v\u00e1lvula", "nearby[0].what") == "valve");
  CHECK(taken("picado", "main.condition") == "pitted");
  CHECK(taken("6 pulg", "main.size") == "6 in");
  CHECK(taken("1-1/4 pulg.", "service.size") == "1-1/4 in");
  CHECK(taken("4 pies 6 pulgadas", "main.cover") == "4 ft 6 in");
  CHECK(taken("-6 pies", "nearby[0].along") == "-6 ft");
  CHECK(taken("82 lb/pulg2", "main.pressure") == "82 psi");
  CHECK(taken("82 psi", "main.pressure") == "82 psi");
  CHECK(taken("82", "main.pressure") == "82");
  CHECK(as_a_job_has_it("6 pulg", field_at("main.size"), Language::english) == "6 pulg");
  for (const std::string_view yes : {"s\u00ed", "si", "S", "S\u00cd", "yes"})
    CHECK(interview::yes_or_no(yes, Language::spanish) == true);
  for (const std::string_view no : {"no", "N"}) CHECK(interview::yes_or_no(no, Language::spanish) == false);
  CHECK_FALSE(interview::yes_or_no("si", Language::english));
  CHECK(interview::said_in("no s\u00e9", Language::spanish) == interview::Said::not_known);
  CHECK(interview::said_in("atr\u00e1s", Language::spanish) == interview::Said::back);
  CHECK(interview::said_in("alto", Language::spanish) == interview::Said::stop);
  CHECK(interview::said_in("?", Language::spanish) == interview::Said::help);
  CHECK(interview::said_in("alto", Language::english) == interview::Said::value);
}

TEST_CASE("every word of a choice that is asked for is understood as it is shown") {
  const std::set<std::string_view> same = {"PVC",
                                           "PVCO",
                                           "gas",
                                           "AWWA taper",
                                           "NPT",
                                           "ISO 7-1",
                                           "PEX SDR 9",
                                           "PVC Schedule 40",
                                           "PVC Schedule 80",
                                           "CPVC SDR 11",
                                           "PVC DR 18",
                                           "IPC",
                                           "UPC",
                                           "NSPC",
                                           "A",
                                           "B",
                                           "C"};
  for (const interview::Section& section : interview::sections()) {
    for (const interview::Question& question : section.questions) {
      const io::JobField* const field = question.field();
      if (field == nullptr) continue;
      INFO(question.path);
      const bool quantity = field->type == io::FieldType::quantity;
      if (quantity)
        CHECK(interview::allowed(*field, Catalog::builtin(), Language::spanish) !=
              interview::allowed(*field, Catalog::builtin(), Language::english));
      std::span<const std::string_view> names;
      if (field->type == io::FieldType::material) names = material_names;
      if (field->type == io::FieldType::choice) names = field->choice->names;
      for (const std::string_view name : names) {
        const std::string_view shown = words::term(name, Language::spanish);
        INFO(name);
        CHECK((shown != name || same.contains(name)));
        CHECK(as_a_job_has_it(shown, *field, Language::spanish) == name);
      }
      if (field->type != io::FieldType::choice) continue;
      for (const io::AskedWord& asked : field->choice->asked)
        CHECK(words::term(asked.ask, Language::spanish) != asked.ask);
    }
  }
}

TEST_CASE("a job told in Spanish is the job told in English") {
  const Replies english = {{"Work order number?", "AV-1041"},
                           {"What is the main made of?", "ductile iron"},
                           {"nominal size of the main?", "8 in"},
                           {"class or dimension ratio", "PC 350"},
                           {"highest pressure", "82 psi"},
                           {"proved to carry", "water"},
                           {"top of the main below", "4 ft 6 in"},
                           {"dug up", "yes"},
                           {"bare pipe look", "sound"},
                           {"wrapped in polyethylene", "no"},
                           {"nominal size of the service?", "1 in"},
                           {"How is the tap to be made?", "saddle"},
                           {"Has somebody looked", "yes"},
                           {"What is there?", "bell"},
                           {"What else is there?", "nothing"},
                           {"How far along the main", "7 ft"},
                           {"gets enough water?", "yes"},
                           {"service line made of?", "copper type K"},
                           {"crew should know", "none"}};
  const Replies spanish = {{"\u00bfN\u00famero de la orden", "AV-1041"},
                           {"\u00bfDe qu\u00e9 es la tuber\u00eda principal?", "Hierro d\u00factil"},
                           {"nominal de la tuber\u00eda principal?", "8"},
                           {"nominal de la tuber\u00eda principal?", ""},  // yes to inches
                           {"clase o relaci\u00f3n", "PC 350"},
                           {"presi\u00f3n m\u00e1s alta en la", "82 lb/pulg2"},
                           {"comprobado que lleva", "agua"},
                           {"profundidad est\u00e1 el lomo", "4 pies 6 pulg"},
                           {"descubierto el tubo", "s\u00ed"},
                           {"se ve el tubo", "sano"},
                           {"pel\u00edcula de polietileno", "no"},
                           {"nominal del servicio?", "1 pulg"},
                           {"ha de hacer la toma", "abrazadera"},
                           {"mirado a lo largo", "si"},
                           {"\u00bfQu\u00e9 hay ah\u00ed?", "campana"},
                           {"\u00bfQu\u00e9 m\u00e1s hay ah\u00ed?", "nada"},
                           {"\u00bfA qu\u00e9 distancia a lo largo", "7 pies"},
                           {"le llega agua", "S"},
                           {"De qu\u00e9 es la l\u00ednea de servicio?", "cobre tipo K"},
                           {"deba saber la cuadrilla", "ninguno"}};
  const std::string told = job_told(english, Language::english);
  INFO(told);
  CHECK(told.find("\"copper type K\"") != std::string::npos);
  CHECK(job_told(spanish, Language::spanish) == told);
}

TEST_CASE("what cannot be taken is said in Spanish, with what may be") {
  const Interviewed told = interviewed({{"\u00bfDe qu\u00e9 es la tuber\u00eda principal?", "hierro ductl"},
                                        {"\u00bfDe qu\u00e9 es la tuber\u00eda principal?", "hierro fundido"},
                                        {"presi\u00f3n m\u00e1s alta en la", "82"},
                                        {"presi\u00f3n m\u00e1s alta en la", "82 pies"},
                                        {"presi\u00f3n m\u00e1s alta en la", "0.1 psi"},
                                        {"presi\u00f3n m\u00e1s alta en la", "82 psi"},
                                        {"descubierto el tubo", "quiz\u00e1s"},
                                        {"descubierto el tubo", "no"},
                                        {"agua suficiente", "s\u00ed"},
                                        {"De qu\u00e9 es la l\u00ednea de servicio?", "copper"},
                                        {"De qu\u00e9 es la l\u00ednea de servicio?", "no s\u00e9"}},
                                       "", Language::spanish);
  REQUIRE(told.facts);
  CHECK(told.heard_of("\u00bfquiso decir \u00abhierro d\u00factil\u00bb?"));
  CHECK(told.heard_of("escriba \"82 psi\" o \"82 kPa\""));
  CHECK(told.heard_of("tiene la unidad de otra cosa"));
  CHECK(told.heard_of("de 1 psi"));
  CHECK(told.heard_of("no es ni s\u00ed ni no"));
  CHECK(told.heard_of("diga cu\u00e1l: \"cobre tipo K\""));
  CHECK(told.fact("main.material") == "cast iron");
  CHECK(told.fact("main.pressure") == "82 psi");
  const std::string closing = interview::closing_words(*told.facts, "job.json", Language::spanish);
  CHECK(closing.find("faltan 2 datos por averiguar") != std::string::npos);
  CHECK(closing.find("--language es") != std::string::npos);
}
