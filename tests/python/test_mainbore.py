"""The Python package over the built library. MAINBORE_LIBRARY, MAINBORE_PROGRAM and MAINBORE_SOURCE say where they are."""
import collections
import contextlib
import copy
import io
import itertools
import json
import os
import pathlib
import pickle
import subprocess
import sys
import tempfile
import threading
import types
import unittest

SOURCE = pathlib.Path(os.environ["MAINBORE_SOURCE"])
PROGRAM = os.environ["MAINBORE_PROGRAM"]
sys.path.insert(0, str(SOURCE / "src/python"))
import mainbore  # noqa: E402

JOB = {"id": "AV-1", "main": {"material": "ductile iron", "size": "8 in", "pressure": "82 psi"}, "service": {"size": "1 in"}}


def command(*arguments, text=None):
    done = subprocess.run([PROGRAM, *arguments], input=text, capture_output=True, check=False)
    assert done.returncode in (0, 1, 2, 3), done.stderr
    return done.stdout


def orders(count):
    for number in range(count):
        job = copy.deepcopy(JOB)
        job["id"] = f"AV-{number}"
        job["main"]["size"] = f"{4 + 2 * (number % 4)} in"
        job["main"]["pressure"] = f"{40 + number % 120} psi"
        if number % 17 == 3:
            job["main"]["material"] = "ductile irn"
        if number % 23 == 3:
            job["main"]["carries"] = "reclaimed water"
        yield job


class OneJob(unittest.TestCase):
    def setUp(self):
        self.planner = mainbore.Planner()

    def test_a_plan_is_that_of_the_command(self):
        text = json.dumps(JOB).encode()
        self.assertEqual(self.planner.plan_json(JOB).encode(), command("plan", "-", "--format", "json", "--no-settings", text=text))
        self.assertEqual(self.planner.card(JOB, units="si").encode(),
                         command("plan", "-", "--units", "si", "--no-settings", text=text))
        self.assertEqual(self.planner.card(JOB, full=True, language="es").encode(),
                         command("plan", "-", "--full", "--language", "es", "--no-settings", text=text))
        self.assertEqual(self.planner.sheet(JOB).encode(), command("plan", "-", "--format", "html", "--no-settings", text=text))

    def test_members(self):
        plan = self.planner.plan(JOB)
        self.assertEqual(plan["verdict"], "hold")
        self.assertEqual(plan.verdict, "hold")
        self.assertEqual(plan, json.loads(self.planner.plan_json(JOB)))
        self.assertTrue(all("code" in hold for hold in plan.holds))
        self.assertEqual(self.planner.verdict(JOB)["holds"], [hold["code"] for hold in plan.holds])
        self.assertIn("STOP NUMBERS", plan.card())
        self.assertEqual(self.planner.plan(JOB, units="si")["pressure"]["line"]["unit"], "kPa")

    def test_text_and_bytes_are_jobs_too(self):
        for job in (json.dumps(JOB), json.dumps(JOB).encode()):
            self.assertEqual(self.planner.plan(job), self.planner.plan(JOB))
        with self.assertRaises(TypeError):
            self.planner.plan(17)

    def test_a_plan_shows_as_its_sheet(self):
        shown = self.planner.plan(JOB)._repr_html_()
        self.assertTrue(shown.startswith("<iframe srcdoc=\"&lt;!DOCTYPE html&gt;"))
        self.assertNotIn("<script", shown)

    def test_every_fault_is_raised(self):
        with self.assertRaises(mainbore.UnreadableError) as raised:
            self.planner.plan('{"main": {"material": "ductile irn",\n "size": "8 psi"}}')
        faults = raised.exception.faults
        self.assertGreaterEqual(len(faults), 3)
        self.assertIn(("job.unknown-value", 1, 23, "/main/material"),
                      [(fault["code"], fault["line"], fault["column"], fault["path"]) for fault in faults])
        self.assertIn('did you mean "ductile iron"?', str(raised.exception))
        self.assertIsInstance(raised.exception, ValueError)
        self.assertEqual(pickle.loads(pickle.dumps(raised.exception)).faults, faults)

    def test_what_is_no_text_is_refused_not_crashed_on(self):
        for job in ("", "\ud800", b"\xff\xfe", "[" * 100000, "{" + "\0" * 9, '{"id": "\\u0000"}'):
            with self.assertRaises(mainbore.UnreadableError):
                self.planner.plan(job)
        for wrong in ({"units": "metric"}, {"language": "fr"}):
            with self.assertRaises(ValueError):
                self.planner.plan(JOB, **wrong)


class Texts(unittest.TestCase):
    def test_rules(self):
        strict = {"name": "Ashby Vale", "pressure": {"wet_tap_limit": {"value": "60 psi", "reference": "Standard 4"}}}
        plan = mainbore.Planner(rules=strict).plan(JOB)
        self.assertNotEqual(plan["pressure"], mainbore.Planner().plan(JOB)["pressure"])
        file = SOURCE / "examples/rules/ashby_vale.json"
        for given in (file, str(file), [file], json.loads(file.read_text())):
            mainbore.Planner(rules=given)
        text = json.dumps(JOB).encode()
        self.assertEqual(mainbore.Planner(rules=str(file)).plan_json(JOB).encode(),
                         command("plan", "-", "--rules", str(file), "--format", "json", "--no-settings", text=text))

    def test_rules_that_cannot_be(self):
        with self.assertRaises(mainbore.UnreadableError) as raised:
            mainbore.Planner(rules={"presure": {}, "plaice": {}})
        self.assertEqual([fault["path"] for fault in raised.exception.faults], ["/presure", "/plaice"])
        with self.assertRaises(OSError):
            mainbore.Planner(rules="nowhere.json")

    def test_settings_bring_their_rules(self):
        with tempfile.TemporaryDirectory() as folder:
            rules = pathlib.Path(folder, "own.json")
            rules.write_text((SOURCE / "examples/rules/ashby_vale.json").read_text())
            settings = pathlib.Path(folder, "settings.json")
            settings.write_text(json.dumps({"format": 1, "rules": ["own.json"], "crew": "North yard", "units": "si"}))
            text = json.dumps(JOB).encode()
            made = mainbore.Planner(settings=str(settings))
            self.assertEqual(made.plan_json(JOB).encode(),
                             command("plan", "-", "--settings", str(settings), "--format", "json", text=text))
            self.assertEqual(b"".join(made.batch_bytes([JOB], what="plan")),
                             command("batch", "-", "--settings", str(settings), "--format", "ndjson", "--full", text=text))

    def test_approved_fittings(self):
        text = json.dumps(JOB).encode()
        for name in ("ashby_vale.csv", "ashby_vale.json"):
            path = str(SOURCE / "examples/approved" / name)
            planner = mainbore.Planner(approved=path)
            self.assertEqual(planner.plan_json(JOB).encode(),
                             command("plan", "-", "--approved", path, "--format", "json", "--no-settings", text=text))
            self.assertEqual(pickle.loads(pickle.dumps(planner)).plan(JOB), planner.plan(JOB))
        wanted = list(planner.batch(orders(40)))
        self.assertEqual(b"".join(planner.batch_bytes(orders(40))),
                         command("batch", "-", "--in", "ndjson", "--approved", path, "--format", "ndjson",
                                 text="\n".join(json.dumps(order) for order in orders(40)).encode()))
        self.assertNotEqual(wanted, list(mainbore.Planner().batch(orders(40))))
        as_mapping = mainbore.Planner(approved=json.loads(pathlib.Path(path).read_text())).plan(JOB)
        self.assertEqual(as_mapping["approved"]["fittings"], planner.plan(JOB)["approved"]["fittings"])
        with self.assertRaises(mainbore.UnreadableError) as raised:
            mainbore.Planner(approved={"format": 1, "itmes": []})
        self.assertEqual(raised.exception.faults[0]["file"], "approved list")

    def test_settings_bring_their_approved_fittings(self):
        text = json.dumps(JOB).encode()
        with tempfile.TemporaryDirectory() as folder:
            lists = [pathlib.Path(folder, name) for name in ("own.csv", "other.csv")]
            for one in lists:
                one.write_text((SOURCE / "examples/approved/ashby_vale.csv").read_text())
            rules = pathlib.Path(folder, "own.json")
            rules.write_text((SOURCE / "examples/rules/ashby_vale.json").read_text())
            settings = pathlib.Path(folder, "settings.json")
            settings.write_text(json.dumps({"format": 1, "approved": "own.csv", "rules": ["own.json"]}))
            for given in ({}, {"approved": str(lists[0])}, {"approved": str(lists[1])}):
                options = [word for name, path in given.items() for word in (f"--{name}", path)]
                self.assertEqual(mainbore.Planner(settings=str(settings), **given).plan_json(JOB).encode(),
                                 command("plan", "-", "--settings", str(settings), *options, "--format", "json", text=text))
            # A list of the same name in another folder is another list.
            other = pathlib.Path(folder, "elsewhere")
            other.mkdir()
            (other / "own.csv").write_text("kind,size,thread,stock\nstop,1 in,AWWA taper,99-999\n")
            self.addCleanup(os.chdir, os.getcwd())
            os.chdir(other)
            plan = mainbore.Planner(settings=str(settings), approved="own.csv").plan(JOB)
            self.assertTrue(plan["approved"]["file"].endswith("elsewhere/own.csv"))
            self.assertEqual(plan["settings"]["set_aside"], ["approved"])
            lists[0].unlink()
            with self.assertRaises(OSError):
                mainbore.Planner(settings=str(settings))

    def test_tables(self):
        made = mainbore.Planner(data=SOURCE / "data")
        self.assertEqual(made.plan(JOB), mainbore.Planner().plan(JOB))
        with tempfile.TemporaryDirectory() as folder, self.assertRaises(mainbore.UnreadableError):
            pathlib.Path(folder, "pipes.json").write_text("{}")
            mainbore.Planner(data=folder)
        with self.assertRaises(OSError):
            mainbore.Planner(data="nowhere")

    def test_a_planner_travels(self):
        planner = mainbore.Planner(rules={"name": "Ashby Vale", "pressure": {"wet_tap_limit": "60 psi"}})
        again = pickle.loads(pickle.dumps(planner))
        self.assertEqual(again.plan(JOB), planner.plan(JOB))
        self.assertEqual(pickle.loads(pickle.dumps(planner.plan(JOB))).sheet(), planner.sheet(JOB))


class Batch(unittest.TestCase):
    def setUp(self):
        self.planner = mainbore.Planner()

    def test_records_are_those_of_the_command(self):
        lines = [json.dumps(order) for order in orders(1500)]
        text = "\n".join(lines).encode()
        for what, options in (("verdict", []), ("decisions", ["--decisions"]), ("plan", ["--full"])):
            count = 1500 if what == "verdict" else 60
            text = "\n".join(lines[:count]).encode()
            wanted = command("batch", "-", "--in", "ndjson", "--format", "ndjson", *options, text=text)
            for jobs, chunk in ((1, 512), (3, 100), (1, 1)):
                got = b"".join(self.planner.batch_bytes(lines[:count], what=what, jobs=jobs, chunk=chunk))
                self.assertEqual(got, wanted)
            self.assertEqual(list(self.planner.batch(orders(count), what=what)), [json.loads(line) for line in wanted.splitlines()])

    def test_a_record_for_each_order(self):
        bad = ["", "   ", "{", "null", "[1]", b"\xff", '{"id":\n"B"}', '{"id": "AV-9", "id": "AV-9"}', {"id": "C"}, "\x00"]
        records = list(self.planner.batch([*bad, JOB]))
        self.assertEqual([record["row"] for record in records], list(range(1, len(bad) + 2)))
        self.assertEqual([record["verdict"] for record in records], ["unreadable"] * len(bad) + ["hold"])
        self.assertTrue(all(record["reasons"] for record in records[:-1]))
        self.assertEqual(records[8]["id"], "C")

    def test_it_streams(self):
        taken = []

        def endless():
            for number in itertools.count():
                taken.append(number)
                yield {**JOB, "id": f"AV-{number}"}

        stream = self.planner.batch(endless())
        self.assertEqual(next(stream)["id"], "AV-0")
        self.assertLessEqual(len(taken), 16)
        self.assertEqual([record["row"] for record in itertools.islice(stream, 2000)], list(range(2, 2002)))
        self.assertLess(len(taken), 4000)
        self.assertEqual(list(self.planner.batch([])), [])

    def test_orders_taken_ahead_change_nothing(self):
        wanted = b"".join(self.planner.batch_bytes(orders(700), chunk=1))
        running = threading.active_count()
        for jobs, chunk in ((0, 64), (1, 64), (1, 512), (2, 100), (5, 64)):
            self.assertEqual(b"".join(self.planner.batch_bytes(orders(700), jobs=jobs, chunk=chunk)), wanted)
        stream = self.planner.batch(orders(700), chunk=64)
        self.assertEqual([record["row"] for record in itertools.islice(stream, 300)], list(range(1, 301)))
        stream.close()  # by whoever has seen enough
        self.assertEqual(threading.active_count(), running)

    def test_what_is_raised_comes_in_its_place(self):
        loop = {}
        loop["main"] = loop

        def breaking():
            yield from orders(400)
            raise OSError("the disk is gone")

        for jobs in (1, 3):
            for given, raised in ((breaking(), OSError), ([*orders(400), {"id": object()}], TypeError),
                                  ([*orders(400), loop], ValueError), ([*orders(400), 7], TypeError)):
                got = []
                with self.assertRaises(raised):
                    got.extend(record["row"] for record in self.planner.batch(given, jobs=jobs, chunk=64))
                self.assertEqual(got, list(range(1, 377)))  # those of the chunks before

    def test_a_mapping_is_its_text(self):
        class Own(dict):
            pass

        class Number:
            def tolist(self):
                return 1962

        odd = [{**JOB, "id": "Straße \u2028 \n\" \\ \x00"}, {**JOB, "id": "\ud800"}, Own(JOB), {**JOB, "service": Own(JOB["service"])},
               collections.OrderedDict(JOB), types.MappingProxyType(JOB), {**JOB, "main": {**JOB["main"], "installed": Number()}},
               {**JOB, "date": None}, {**JOB, 7: 1.5}, {}, json.dumps(JOB), json.dumps(JOB).encode()]
        one_by_one = b"".join(self.planner.batch_bytes(odd, chunk=1))
        self.assertEqual(b"".join(self.planner.batch_bytes(odd)), one_by_one)
        self.assertEqual(b"".join(self.planner.batch_bytes(map(mainbore._jobs.job_bytes, odd))), one_by_one)

    def test_one_planner_for_many_threads(self):
        wanted = list(self.planner.batch(orders(300)))
        got = [None] * 8

        def work(number):
            got[number] = list(self.planner.batch(orders(300)))

        threads = [threading.Thread(target=work, args=(number,)) for number in range(8)]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join()
        self.assertTrue(all(one == wanted for one in got))


class Examples(unittest.TestCase):
    def test_what_the_page_shows(self):
        page = (SOURCE / "docs/library.md").read_text()
        shown = page.partition("```python\n")[2].partition("```")[0].replace("ashby_vale.json", str(SOURCE / "examples/rules/ashby_vale.json"))
        made = {}
        with contextlib.redirect_stdout(io.StringIO()) as out:
            exec(shown, made)
            exec((SOURCE / "examples/python/one_job.py").read_text(), {})
        self.assertEqual(made["plan"].verdict, "hold")
        self.assertIn("STOP NUMBERS", out.getvalue())


class Frames(unittest.TestCase):
    FLAT = {"id": "AV-1", "main.material": "ductile iron", "main.size": "8 in", "main.pressure": "82 psi", "service.size": "1 in",
            "main.class": None, "main.wall": float("nan"), "crew": ""}

    def test_paths_become_a_job(self):
        self.assertEqual(mainbore.nested(self.FLAT), JOB)
        with self.assertRaises(ValueError):
            mainbore.nested({"main": "x", "main.size": "8 in"})

    def test_a_data_frame_of_orders(self):
        try:
            import pandas
        except ImportError:
            self.skipTest("python3-pandas is not installed")
        example = {}
        exec((SOURCE / "examples/python/frame.py").read_text(), example)
        planner = mainbore.Planner()
        frame = pandas.read_csv(SOURCE / "examples/python/orders.csv")
        planned = example["plan_frame"](frame, planner)
        self.assertEqual(list(planned["verdict"]), [record["verdict"] for record in planner.batch(
            mainbore.nested(order) for order in frame.to_dict("records"))])
        self.assertEqual(len(planned), len(frame))
        page = (SOURCE / "docs/library.md").read_text().partition("### Data frames")[2]
        exec(page.partition("```python\n")[2].partition("```")[0], {"mainbore": mainbore, "planner": planner, "frame": frame})
        self.assertEqual(list(frame["verdict"]), list(planned["verdict"]))


if __name__ == "__main__":
    unittest.main()
