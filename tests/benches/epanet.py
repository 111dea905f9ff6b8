#!/usr/bin/env python3
"""Times EPANET 2.2's own engine on the networks of benches/network.rs, and that benchmark beside it.

usage: epanet.py            from the repository; needs `pip install wntr==1.5.0 six`, cargo and cc.

A developer's tool: no test runs it. Each network is written as an .inp file and opened once; what is
timed is EN_initH and EN_runH, called from C, so neither reading nor Python counts, nor the order of
elimination, which EPANET finds when it opens. "cold" begins from EPANET's first flows, "warm" from
the last solution. Of both sides the least time counts, which other work on the machine disturbs
least. EPANET stops at a change of 1e-5 of the flows, 1e-7 m and 1e-7 L/s, as in
reference e; this solver stops later, at a step of 1e-8 of the flows.
"""
import ctypes, json, os, subprocess, sys, tempfile

HERE = os.path.dirname(os.path.abspath(__file__))
REFERENCE = os.path.join(HERE, "..", "reference")

TIMER = r"""
#include <time.h>
extern int EN_createproject(void **), EN_open(void *, const char *, const char *, const char *),
    EN_openH(void *), EN_initH(void *, int), EN_runH(void *, long *),
    EN_getlinkindex(void *, const char *, int *), EN_getlinkvalue(void *, int, int, double *),
    EN_getstatistic(void *, int, double *);
static void *project;
int begin(const char *inp, const char *rpt, const char *out) {
    int bad = EN_createproject(&project);
    if (!bad) bad = EN_open(project, inp, rpt, out);
    return bad ? bad : EN_openH(project);
}
/* The least time of a solve over many batches, in microseconds. */
double least(int option) {
    double best = 1e9;
    long t;
    for (int batch = 0; batch < 400; batch++) {
        struct timespec a, b;
        clock_gettime(CLOCK_MONOTONIC, &a);
        for (int i = 0; i < 100; i++) { EN_initH(project, option); EN_runH(project, &t); }
        clock_gettime(CLOCK_MONOTONIC, &b);
        double us = ((b.tv_sec - a.tv_sec) * 1e9 + (b.tv_nsec - a.tv_nsec)) / 1e5;
        if (us < best) best = us;
    }
    return best;
}
double flow_m3_s(const char *id) {
    int link; double flow;
    EN_getlinkindex(project, id, &link);
    EN_getlinkvalue(project, link, 8, &flow);
    return flow / 1000.0;
}
double iterations(void) { double n; EN_getstatistic(project, 0, &n); return n; }
"""


def write_inp(case, path):
    """As wntr wrote them for reference e: litres a second, metres, millimetres; viscosity in m2/s."""
    links, tank = case["links"], case["ref_node"]
    nodes = dict.fromkeys(n for l in links for n in (l["from"], l["to"]) if n != tank)
    pipes = [l for l in links if l["type"] == "pipe"]
    pumps = [l for l in links if l["type"] == "pump"]
    rows = ["[JUNCTIONS]"] + ["%s 0 0" % n for n in nodes] + ["[RESERVOIRS]", "%s %r" % (tank, case["ref_head_m"])]
    rows += ["[PIPES]"] + ["%s %s %s %r %r %r %r OPEN" % (l["id"], l["from"], l["to"], l["L_m"], l["D_m"] * 1000, l["eps_m"] * 1000, l["K"]) for l in pipes]
    rows += ["[PUMPS]"] + ["%s %s %s HEAD C%s" % (l["id"], l["from"], l["to"], l["id"]) for l in pumps]
    rows += ["[CURVES]"] + ["C%s %r %r" % (l["id"], q * 1000, h) for l in pumps for q, h in l["curve"]["points"]]
    rows += ["[OPTIONS]", "UNITS LPS", "HEADLOSS D-W", "VISCOSITY %r" % case["fluid"]["nu_m2_s"], "ACCURACY 0.00001",
             "HEADERROR 0.0000001", "FLOWCHANGE 0.0000001", "TRIALS 500", "[TIMES]", "DURATION 0",
             "[REPORT]", "STATUS NO", "SUMMARY NO", "[END]", ""]
    with open(path, "w") as f:
        f.write("\n".join(rows))


def ours(folder):
    """The least microseconds of a sample, by network and way of beginning, from criterion's samples."""
    command = ["cargo", "bench", "-q", "-p", "finrun-tests", "--bench", "network", "--",
               "--warm-up-time", "1", "--measurement-time", "2"]
    subprocess.run(command, cwd=HERE, env=dict(os.environ, CRITERION_HOME=folder), stdout=subprocess.DEVNULL,
                   stderr=subprocess.DEVNULL, check=True)
    found = {}
    for where, _, files in os.walk(folder):
        if "sample.json" in files and os.path.basename(where) == "new":
            with open(os.path.join(where, "benchmark.json")) as f:
                name = json.load(f)["full_id"]
            with open(os.path.join(where, "sample.json")) as f:
                sample = json.load(f)
            least = min(time / count for time, count in zip(sample["times"], sample["iters"]))
            found[name.split()[0], name.split()[-1]] = least / 1000
    return found


def main():
    import wntr
    library = os.path.join(os.path.dirname(wntr.__file__), "epanet", "libepanet", "linux-x64", "libepanet22.so")
    with tempfile.TemporaryDirectory() as folder:
        finrun = ours(folder)
    with open(os.path.join(REFERENCE, "e_hydraulic_networks.json")) as f:
        cases = {case["id"]: case for case in json.load(f)["cases"]}
    print("microseconds a solve, least of many     EPANET 2.2   Finrun   ratio")
    with tempfile.TemporaryDirectory() as folder:
        at = lambda name: os.path.join(folder, name)
        with open(at("timer.c"), "w") as f:
            f.write(TIMER)
        subprocess.run(["cc", "-O2", "-shared", "-fPIC", "-o", at("timer.so"), at("timer.c"), library,
                        "-Wl,-rpath," + os.path.dirname(library)], check=True)
        timer = ctypes.CDLL(at("timer.so"))
        for function in (timer.least, timer.flow_m3_s, timer.iterations):
            function.restype = ctypes.c_double
        for case in [cases[id] for id in sorted({id for id, _ in finrun})]:
            write_inp(case, at("a.inp"))
            error = timer.begin(*(at(name).encode() for name in ("a.inp", "a.rpt", "a.out")))
            if error > 10:      # up to 10 they are warnings
                sys.exit("EPANET refuses %s: %d" % (case["id"], error))
            for how, option in (("cold", 10), ("warm", 0)):
                epanet, mine = timer.least(option), finrun[case["id"], how]
                print("%-9s %2d links  %s  %2d iterations %12.2f %8.2f %7.2f" % (
                    case["id"], len(case["links"]), how, timer.iterations(), epanet, mine, mine / epanet))
            for link in case["links"]:
                kept, flow = case["epanet"][link["id"]]["Q_m3_s"], timer.flow_m3_s(link["id"].encode())
                if abs(flow / kept - 1) > 1e-5:
                    sys.exit("%s %s: %g instead of the %g kept" % (case["id"], link["id"], flow, kept))


main()
