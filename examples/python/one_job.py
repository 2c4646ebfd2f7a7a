"""One job in, the verdict and what must be cleared out."""
import mainbore

planner = mainbore.Planner()
plan = planner.plan({"main": {"material": "ductile iron", "size": "8 in", "pressure": "82 psi"}, "service": {"size": "1 in"}})
print(plan["verdict"])
for hold in plan["holds"]:
    print(hold["code"])
