"""What every group of fault tests works with: the runs of the program that write a result, folders, and the count."""
import os
import pathlib
import re
import resource
import shutil
import subprocess
import tempfile

OLD = b"an earlier result\n"
PATIENCE = 60  # seconds until something that should come counts as not coming


class Tally:
    """Counts what was tried and what held, and tells what did not."""

    def __init__(self, what):
        self.what = what
        self.tried = 0
        self.faults = []
        self.skipped = ""

    def check(self, label, **expected):
        """Each keyword says what must be true."""
        self.tried += 1
        wrong = [name for name, holds in expected.items() if not holds]
        if wrong:
            self.faults.append(f"{self.what}: {label}: not so: {', '.join(wrong)}")

    def line(self):
        if self.skipped:
            return f"{self.what:<44} skipped: {self.skipped}"
        return f"{self.what:<44} tried {self.tried:6}   held {self.tried - len(self.faults):6}"


def surroundings(folder):
    """No settings file of whoever runs the tests is read."""
    return {**os.environ, "XDG_CONFIG_HOME": f"{folder}/none"}


class Program:
    def __init__(self, path, source):
        self.path = str(pathlib.Path(path).resolve())
        self.source = pathlib.Path(source).resolve()

    def run(self, arguments, folder, output=subprocess.PIPE, text=None, stdin=None, error=subprocess.PIPE, **how):
        how.setdefault("env", surroundings(folder))
        feed = {"input": text} if text is not None else {"stdin": stdin or subprocess.DEVNULL}
        return subprocess.run([self.path, *arguments], cwd=folder, stdout=output, stderr=error, check=False,
                              timeout=PATIENCE, **feed, **how)

    def start(self, arguments, folder, **how):
        return subprocess.Popen([self.path, *arguments], cwd=folder, env=surroundings(folder), stderr=subprocess.PIPE, **how)

    def help_of(self, command):
        return self.run([command, "--help"], self.source).stdout.decode()


class Scratch:
    """A folder with one file of each kind that is read, and with what else a test puts there."""

    def __init__(self, program, tables=False):
        examples = program.source / "examples"
        self.path = pathlib.Path(tempfile.mkdtemp(prefix="mainbore-faults-"))
        self.copy(examples / "jobs/ductile_iron_direct.json", "job.json")
        self.copy(examples / "jobs/pvc_saddle.json", "other.json")
        self.copy(examples / "orders/week.csv", "week.csv")
        self.copy(examples / "orders/ashby_vale_export.csv", "export.csv")
        self.copy(examples / "orders/ashby_vale_map.json", "map.json")
        self.copy(examples / "rules/ashby_vale.json", "rules.json")
        self.copy(examples / "readings/AV-1041.json", "readings.json")
        program.run(["record", "job.json", "readings.json", "--append", "ledger.ndjson"], self.path)
        (self.path / "orders.ndjson").write_text(order(1) + order(2))
        (self.path / "taps.geojson").write_text('{"type": "FeatureCollection", "features": [%s]}\n' % feature(1))
        (self.path / "truck.json").write_text('{"rules": ["named.json"]}')
        self.copy(examples / "rules/ashby_vale.json", "named.json")
        (self.path / "mainbore").mkdir()  # where a settings file of one's own stands
        (self.path / "mainbore/settings.json").write_text('{"units": "si"}')
        if tables:
            shutil.copytree(program.source / "data", self.path / "data")
        self.listing = self.names()

    def __enter__(self):
        return self

    def __exit__(self, *_):
        shutil.rmtree(self.path, ignore_errors=True)

    def __truediv__(self, name):
        return self.path / name

    def copy(self, file, name):
        shutil.copyfile(file, self.path / name)

    def left(self):
        """What a run left behind beside its result."""
        return sorted(name for name in set(self.names()) - set(self.listing) if name != "out")

    def names(self):
        return sorted(str(path.relative_to(self.path)) for path in self.path.rglob("*"))


def order(number):
    return ('{"id": "AV-%d", "main": {"material": "PVC", "size": "6 in", "pressure": "60 psi"}, '
            '"service": {"size": "1 in"}}\n' % number)


def feature(number):
    return ('{"type": "Feature", "geometry": {"type": "Point", "coordinates": [1, 2]}, "properties": {"id": %d, '
            '"main.material": "PVC", "main.size": "6 in", "main.pressure": "60 psi", "service.size": "1 in"}}' % number)


TRIALS = ["--trial", "depth=1.5 in, wrench=2, showing=3", "--trial", "depth=1.58 in, wrench=2, showing=2"]
RULES_FORMATS = [[], ["--format", "json"]]

# Every command with a result, and each form its result has: (arguments, whether it takes -o). A test holds this list
# against the help pages.
RUNS = (
    [(["plan", "job.json", *form], True)
     for form in ([], ["--steps", "--materials"], ["--what-if"], ["--format", "json"], ["--format", "json", "--what-if"],
                  ["--format", "html"], ["--format", "calc"], ["--format", "calc-html"])]
    + [(["batch", "week.csv", *form], True)
       for form in ([], ["--format", "html"], ["--format", "ndjson"], ["--format", "csv"],
                    ["--format", "ndjson", "--full"], ["--format", "ndjson", "--decisions"],
                    ["--format", "ndjson", "--jobs", "3"])]
    + [(["batch", "export.csv", "--map", "map.json", "--columns"], True),
       (["batch", "week.csv", "--format", "csv", "--keep", "all"], True),
       (["batch", "taps.geojson", "--format", "geojson"], True)]
    + [(["table", "--material", "PVC", *form], True)
       for form in ([], ["--format", "csv"], ["--format", "json"], ["--format", "html"])]
    + [(["identify", "--circumference", "21-3/4 in", *form], True) for form in ([], ["--format", "json"])]
    + [(["trial", "--threads", "14", *TRIALS, *form], True) for form in ([], ["--format", "json"])]
    + [(["rules", *words, *form], True)
       for words in (["check", "rules.json"], ["show"], ["diff", "default", "rules.json"]) for form in RULES_FORMATS]
    + [(["schema", name], True) for name in ("job", "rules", "plan", "map", "machine", "settings", "verdict", "record", "approved")]
    + [(["record", "job.json", "readings.json", *form], True) for form in ([], ["--format", "json"])]
    + [(["record", "--export", "ledger.ndjson", "--format", form], True) for form in ("json", "csv", "geojson")]
    + [(["record", "--tools", "ledger.ndjson"], True)]
    + [(["explain", "direct.few-threads"], False), (["explain", "--list"], False), (["--help"], False),
       (["--version"], False)]
)
WITH_OUTPUT = [arguments for arguments, takes_output in RUNS if takes_output]


def label(arguments):
    return " ".join(arguments)


def commands_of(program):
    names = re.findall(r"^  ([a-z]+)  ", program.run(["--help"], program.source).stdout.decode().partition("Subcommands:")[2], re.M)
    assert names, "the help page lists no command"
    return names


def formats_of(page):
    found = re.search(r"--format ([a-z|]+)", page.partition("Options:")[2])
    return found.group(1).split("|") if found else []


def limited(most_bytes):
    """For preexec_fn: no file may grow over this."""
    return lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (most_bytes, most_bytes))
