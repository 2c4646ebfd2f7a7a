"""Orders planned on a cluster, in two ways.

`pipe` runs the installed program on the lines of each partition. `in_pandas` calls the library in the workers: every worker
needs the Python package, and gets the rules with the planner, which travels. Orders are rows whose columns are paths of a job.

    spark-submit examples/python/spark.py orders.ndjson
"""
import json
import sys

import mainbore

COMMAND = "mainbore batch - --in ndjson --format ndjson --no-rows --fail-on never"


def pipe(lines, command=COMMAND):
    """An RDD of orders as lines of JSON; an RDD of records, in their order."""
    return lines.pipe(command, checkCode=True).map(json.loads)


def in_pandas(orders, planner):
    """A data frame of orders; one of id, verdict and holds."""

    def plan(frames):
        for frame in frames:
            jobs = (mainbore.nested(order) for order in frame.to_dict("records"))
            records = list(planner.batch(jobs, rows=False))
            yield type(frame)({"id": [record.get("id", "") for record in records],
                               "verdict": [record["verdict"] for record in records],
                               "holds": [",".join(record.get("holds", [])) for record in records]})

    return orders.mapInPandas(plan, "id string, verdict string, holds string")


if __name__ == "__main__":
    from pyspark.sql import SparkSession

    session = SparkSession.builder.getOrCreate()
    for record in pipe(session.sparkContext.textFile(sys.argv[1])).toLocalIterator():
        print(record.get("id", ""), record["verdict"])
