"""Orders in a data frame whose columns are paths of a job; the verdicts as columns beside them.

    python3 examples/python/frame.py examples/python/orders.csv
"""
import sys

import mainbore


def plan_frame(frame, planner):
    """The frame with verdict, holds and what was not understood. A cell that is empty is a fact that is not known."""
    jobs = (mainbore.nested(order) for order in frame.to_dict("records"))
    records = list(planner.batch(jobs, rows=False))
    return frame.assign(
        verdict=[record["verdict"] for record in records],
        holds=[", ".join(record.get("holds", [])) for record in records],
        unreadable=["; ".join(reason["message"] for reason in record.get("reasons", [])) for record in records],
    )


if __name__ == "__main__":
    import pandas

    orders = pandas.read_csv(sys.argv[1], dtype=str)
    print(plan_frame(orders, mainbore.Planner())[["id", "verdict", "holds", "unreadable"]].to_string(index=False))
