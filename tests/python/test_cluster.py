"""The example for a cluster, over Spark where it is at hand, else over a stand-in that does the same on this machine."""
import json
import os
import pathlib
import pickle
import shlex
import subprocess
import sys
import unittest

SOURCE = pathlib.Path(os.environ["MAINBORE_SOURCE"])
PROGRAM = os.environ["MAINBORE_PROGRAM"]
sys.path.insert(0, str(SOURCE / "src/python"))
import mainbore  # noqa: E402

EXAMPLE = {"__name__": "example"}
exec((SOURCE / "examples/python/spark.py").read_text(), EXAMPLE)
COMMAND = EXAMPLE["COMMAND"].replace("mainbore", shlex.quote(PROGRAM), 1)


class Partitions:
    """An RDD as far as the example asks: each partition goes through a process of its own, line by line."""

    def __init__(self, partitions):
        self.partitions = partitions

    def pipe(self, command, checkCode):
        made = []
        for lines in self.partitions:
            done = subprocess.run(shlex.split(command), input="".join(line + "\n" for line in lines).encode(), capture_output=True,
                                  check=checkCode)
            made.append(done.stdout.decode().splitlines())
        return Partitions(made)

    def map(self, function):
        return Partitions([[function(one) for one in lines] for lines in self.partitions])

    def collect(self):
        return [one for lines in self.partitions for one in lines]


class Frame(dict):
    """A data frame of columns, as far as the example asks."""

    def to_dict(self, _orient):
        return [dict(zip(self, row)) for row in zip(*self.values())]


class Frames:
    """What mapInPandas does: the function travels, and gets the frames of a partition one by one."""

    def __init__(self, frames):
        self.frames = frames

    def mapInPandas(self, function, _schema):
        return list(function(iter(self.frames)))


def rows(count):
    materials = ["ductile iron", "PVC", "cast iron", "ductile irn"]
    return [{"id": f"AV-{number}", "main.material": materials[number % 4], "main.size": "8 in",
             "main.pressure": f"{50 + number % 100} psi", "service.size": "1 in"} for number in range(count)]


class Cluster(unittest.TestCase):
    def setUp(self):
        self.rows = rows(400)
        self.lines = [json.dumps(mainbore.nested(row)) for row in self.rows]
        self.wanted = list(mainbore.Planner().batch(self.lines, rows=False))

    def test_lines_through_the_program(self):
        parts = Partitions([self.lines[:150], self.lines[150:151], self.lines[151:]])
        self.assertEqual(EXAMPLE["pipe"](parts, COMMAND).collect(), self.wanted)

    def test_frames_through_the_library(self):
        planner = pickle.loads(pickle.dumps(mainbore.Planner()))
        frames = [Frame({path: [row[path] for row in part] for path in part[0]}) for part in (self.rows[:100], self.rows[100:])]
        made = EXAMPLE["in_pandas"](Frames(frames), planner)
        self.assertEqual([verdict for frame in made for verdict in frame["verdict"]], [one["verdict"] for one in self.wanted])

    def test_spark_itself(self):
        try:
            from pyspark.sql import SparkSession
        except ImportError:
            self.skipTest("pyspark is not installed")
        session = SparkSession.builder.master("local[2]").getOrCreate()
        lines = session.sparkContext.parallelize(self.lines, 3)
        self.assertEqual(EXAMPLE["pipe"](lines, COMMAND).collect(), self.wanted)


if __name__ == "__main__":
    unittest.main()
