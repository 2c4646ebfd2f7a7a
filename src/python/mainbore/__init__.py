"""Plan service taps on pressurized water mains.

    import mainbore
    planner = mainbore.Planner()
    plan = planner.plan({"main": {"material": "ductile iron", "size": "8 in", "pressure": "82 psi"},
                         "service": {"size": "1 in"}})
    plan["verdict"]                  # "hold"
    for record in planner.batch(orders):
        print(record["id"], record["verdict"])

Plans, records and faults are those of the command, byte for byte (docs/plan.md, docs/batch.md). A planner may be shared by
any number of threads, and pickled. It plans; it does not decide: the utility, the local code, the makers' instructions and
the competent person on site do. Water mains only.
"""
from ._errors import Error, Fault, InternalError, UnreadableError, UsageError
from ._jobs import nested
from ._library import version
from ._planner import Planner
from ._results import Plan, Quantity, Reason, Record, Verdict

__version__ = version()
__all__ = ["Error", "Fault", "InternalError", "Plan", "Planner", "Quantity", "Reason", "Record", "UnreadableError",
           "UsageError", "Verdict", "nested", "version"]
