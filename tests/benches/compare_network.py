#!/usr/bin/env python3
"""Solves the network of a job with EPANET 2.2 (by wntr) and compares its flows with the engine's.

usage: compare_network.py JOB.json...    from the repository; needs `pip install wntr==1.5.0 six`, cargo.

Each job is compared as it is, and in every arrangement driven by its circulator.

A developer's tool: no test runs it. `cargo xtask solve JOB --network` gives the links. EPANET has one
density and one viscosity for all links, so that those of the whole network's mean are taken; it puts
Swamee and Jain's formula for Colebrook's, and a cubic between Reynolds numbers of 2000 and 4000 where
the engine has a straight line. So 2 % of a flow is agreement, 8 % where a pipe lies between the two.
"""
import json, math, os, subprocess, sys, tempfile, warnings
import wntr

warnings.filterwarnings("ignore")

GPM, PSI = 6.30901964e-5, 6894.757293
G = 9.80665


def links_of(job):
    out = subprocess.run(["cargo", "xtask", "solve", job, "--network"], check=True,
                         capture_output=True, text=True)
    return json.loads(out.stdout)


ARRANGEMENTS = ["series", "split", "diverter-tees", "direct-return", "reverse-return", "home-run"]


def variants(path, folder):
    """The job as it is, and a copy in each arrangement."""
    yield path
    for arrangement in ARRANGEMENTS:
        with open(path) as file:
            whole = json.load(file)
        job = whole["job"]
        job["flow_basis"] = "from-pump"
        for number, room in enumerate(job["rooms"]):
            room["branch"] = number % 2
        whole["finrun"] = 3
        tube = job["tube"]
        zones = job.get("zones") or [{"id": 0, "pipe": tube}]
        job["zones"] = [zone | {"arrangement": arrangement, "main": "copper-m-1"} for zone in zones]
        copy = os.path.join(folder, f"{arrangement}.json")
        with open(copy, "w") as file:
            json.dump(whole, file)
        yield copy


def compare(job):
    links = links_of(job)
    pipes = [l for l in links if l["kind"] == "pipe" and l["length_m"] > 0]
    density = sum(l["density_kg_m3"] for l in pipes) / len(pipes)
    viscosity = sum(l["viscosity_pa_s"] for l in pipes) / len(pipes)
    net = wntr.network.WaterNetworkModel()
    net.options.hydraulic.headloss = "D-W"
    net.options.hydraulic.viscosity = viscosity / density / 1.0e-6
    net.options.hydraulic.accuracy = 1e-8
    net.options.hydraulic.trials = 200
    net.options.time.duration = 0
    nodes = sorted({l[end] for l in links for end in ("from", "to")})
    demand = {node: 0.0 for node in nodes}
    for l in links:
        if l["kind"] == "circulation":
            q = l["mass_flow_kg_s"] / density
            demand[l["from"]] += q
            demand[l["to"]] -= q
    for node in nodes:
        net.add_junction(f"N{node}", base_demand=demand[node], elevation=0)
    # The pressure is held anywhere: only flows are compared.
    net.add_reservoir("R", base_head=100)
    net.add_pipe("TIE", "R", f"N{nodes[-1]}", length=0.01, diameter=0.3, roughness=1e-6)
    by_name = {}
    for number, l in enumerate(links):
        name, a, b = f"L{number}", f"N{l['from']}", f"N{l['to']}"
        bore = l.get("diameter_m", 0.02)
        area = math.pi / 4 * bore ** 2
        if l["kind"] == "pipe":
            net.add_pipe(name, a, b, length=max(l["length_m"], 1e-3), diameter=bore,
                         roughness=l["roughness_m"], minor_loss=l["k"])
        elif l["kind"] == "valve":
            # dp = SG (Q/Cv)^2 psi against K rho v^2/2.
            k = l["density_kg_m3"] / 999.03 * (1 / GPM / l["cv"]) ** 2 * PSI \
                * 2 * area ** 2 / l["density_kg_m3"]
            net.add_pipe(name, a, b, length=1e-3, diameter=bore, roughness=1e-6, minor_loss=k)
        elif l["kind"] == "equipment":
            k = l["head_m"] * 2 * G * (area / l["at_m3_s"]) ** 2
            net.add_pipe(name, a, b, length=1e-3, diameter=bore, roughness=1e-6, minor_loss=k)
        elif l["kind"] == "pump":
            net.add_curve(f"C{number}", "HEAD", l["points_m3_s_m"])
            net.add_pump(name, a, b, "HEAD", f"C{number}")
        else:
            continue
        by_name[name] = l
    with tempfile.TemporaryDirectory() as folder:
        sim = wntr.sim.EpanetSimulator(net)
        result = sim.run_sim(file_prefix=os.path.join(folder, "net"), version=2.2)
    flows = result.link["flowrate"].iloc[0]
    most = max(abs(l["mass_flow_kg_s"]) for l in links)
    worst = worst_between = 0.0
    for name, l in by_name.items():
        ours = l["mass_flow_kg_s"]
        # A trickle is the small difference of large losses, which the one density upsets.
        if abs(ours) < 0.05 * most:
            continue
        off = abs(flows[name] * density / ours - 1)
        if l["kind"] == "pipe" and l["length_m"] > 0:
            reynolds = 4 * abs(ours) / (math.pi * l["diameter_m"] * l["viscosity_pa_s"])
            if 2000 < reynolds < 4000:
                worst_between = max(worst_between, off)
                continue
        worst = max(worst, off)
    print(f"{os.path.basename(job):<28} {len(by_name):4} links   worst {worst:.3%}"
          f"   between laminar and turbulent {worst_between:.3%}")
    return worst < 0.02 and worst_between < 0.08


def main(paths):
    good = True
    for path in paths:
        print(path)
        with tempfile.TemporaryDirectory() as folder:
            good = all([compare(job) for job in variants(path, folder)]) and good
    return 0 if good else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
