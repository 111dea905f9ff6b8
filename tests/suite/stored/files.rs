//! The files of these tests: one with everything in it, the least that is one, and what each must have.

/// A file with every struct, list and choice in it, as the program wrote it when serde derived the
/// code of each (kept from then, but for the ends of lines), with what was added since.
pub(super) const FULL: &str = r#"
{"finrun":5,"job":{
    "name":"All \"kinds\" 🏠","units":"si",
    "house":{"outdoors":{"text":"-12","unit":"Celsius"},"wind":{"text":" 4 ","unit":"WindMetrePerSecond"}},
    "station":{"state":"ME","name":"Cove","elevation_m":-3,"t99_f":2,"t996_f":-4,"mean_f":45,
        "coldest_month_f":21,"degree_days_65_f":7300,"wind_mph":9},
    "design_hours":"99.6","air_class":"leaky",
    "air":{"basis":"blower-door","storeys":"two","shelter":"open","flue":"flue",
        "entries":{"blower-flow":{"text":"1500","unit":"AirCubicFootPerMinute"}}},
    "ground":{"soil":"rock","method":"f-factor","edge":"vertical","slab_edge":"horizontal-2-ft-r5",
        "entries":{"edge-r":{"text":"5","unit":"UsR"}}},
    "rooms":[{"id":1,"name":"Den","used":"other","level":"second","shape":"l-shape",
        "entries":{"cut-width":{"text":"1 m","unit":"Foot"}},
        "surfaces":[{"id":2,"kind":"wall","name":"south","behind":{"room":7},"u_value":{"listed":"partition"},
            "entries":{"length":{"text":"5","unit":"Metre"},"free":{"text":"4","unit":"Metre"}},
            "openings":[{"id":3,"kind":"window","u_value":{"own":8},"entries":{"u":{"text":"?","unit":"SiU"}}},
                {"id":4,"kind":"door","u_value":"typed-r","entries":{"r":{"text":"1","unit":"SiR"}}}],
            "wall_use":"only","fixed":[{"run":1,"pieces_ft":[6,4]}]},
            {"id":5,"kind":"floor","name":"","behind":"same-temperature","u_value":"typed-u","entries":{},
                "openings":[],"wall_use":"as-needed","fixed":[]}],
        "zone":1,"branch":2,"route":[{"kind":"doorway","entries":{"length":{"text":"7","unit":"Foot"}}}],
        "diverters":"two","shut_off":"shut","mass":{"own":"heavy"}}],
    "spaces":[{"id":7,"name":"","used":"attic","level":"third","shape":"rectangle","entries":{},"surfaces":[
        {"id":6,"kind":"ceiling","name":"","behind":"outdoors","u_value":{"listed":"roof-deck"},"entries":{},
            "openings":[],"wall_use":"never","fixed":[]}],
        "zone":0,"branch":0,"route":[],"diverters":"one","shut_off":"open","mass":"as-house"}],
    "assemblies":[{"id":8,"name":"Old wall","position":"roof","framing":"roof-rafters",
        "entries":{"r":{"text":"3","unit":"SiR"}},
        "layers":[{"material":{"listed":"softwood"},"place":"through",
            "entries":{"thickness":{"text":"19","unit":"MillimetreSmall"}}},
            {"material":"typed-r","place":"between-framing","entries":{"r":{"text":"R-13","unit":"UsR"}}}]}],
    "bills":{"fuel":"heating-oil-gallon","entries":{"efficiency":{"text":"82","unit":"Percent"}},"list":[
        {"id":9,"from":"2024-12-01","to":"2025-01-01","entries":{"amount":{"text":"100","unit":"One"}}}]},
    "certainty":{"soil":{"text":"25","unit":"Percent"}},
    "element":{"rating_basis":"table","heating_effect":"certified-strict",
        "entries":{"derate":{"text":"95","unit":"Percent"}},
        "points":[{"water":{"text":"60","unit":"Celsius"},"output":{"text":"270","unit":"WattPerMetre"}},{}],
        "stock_ft":[2,10],"stock":[{"feet":2,"entries":{"price":{"text":"31.50","unit":"Currency"}}}],
        "objective":"least-cost"},
    "prices":{"pipe":{"text":"12","unit":"CurrencyPerMetre"}},
    "sized_prices":[{"tube":"pex-1/2","entries":{"elbow":{"text":"2.40","unit":"Currency"}}}],
    "spare":{"pipe":{"text":"10","unit":"Percent"}},
    "cutting":{"sticks":"20-ft","entries":{"kerf":{"text":"2","unit":"MillimetreSmall"}}},
    "tube":"pex-1","flow_basis":"typed",
    "circuit":{"supply":{"text":"75","unit":"Celsius"}},
    "part":{"diverter-k":{"text":"5","unit":"One"}},"pipe_cover":"insulated","zoning":"circulators",
    "pump":{"kind":"points","set":"two-in-series","points":[{"flow":{"text":"1","unit":"GallonPerMinute"}},{}]},
    "zones":[{"id":1,"name":"Up","arrangement":"home-run","main":"copper-m-1","pipe":"pex-1/2",
        "balancing":"valves","back":"in-enclosure","pump":{"typical":"high-head"},"holds":{"thermostat":1},
        "entries":{"trunk":{"text":"3","unit":"Metre"}}}],
    "plant":{"boiler":"condensing","tank":"at-once","metal":"steel","valve":"heated-element",
        "antifreeze":"propylene-glycol","entries":{"other-volume":{"text":"40","unit":"LiquidLitre"}}},
    "control":{"supply":"reset","mass":"medium","entries":{"setback-hours":{"text":"7","unit":"Hour"}}},
    "progress":{"steps":[{"step":"solder.room-1","done":"done","date":"2026-03-01","note":"n","photo":"7"}],
        "measured":{"fill":{"text":"15","unit":"Psi"}},
        "spots":[{"room":1,"entries":{"supply":{"text":"80","unit":"Celsius"}}}]},
    "what_if":[{"id":10,"kind":"ground-walls","counted":"off","whose":{"room":7},"build":{"own":8},
        "leaks":"leakage-area","air_class":"very-leaky","name":"n","level":"basement","outside":"four",
        "entries":{"cost":{"text":"900","unit":"Currency"}}}],
    "existing":{"standing":"installed","ran":"by-thermostat"},
    "next_id":4294967295}}"#;

/// The least that is a file.
pub(super) const LEAST: &str = r#"
{"finrun":1,"job":{"name":"","units":"us","air_class":"tight","rooms":[{"id":1,"name":"","surfaces":[
    {"id":2,"kind":"wall","behind":"ground","u_value":"typed-u","openings":[
        {"id":3,"kind":"door","u_value":"typed-u"}]}]}],
    "assemblies":[{"id":4,"name":"","position":"wall","framing":"none",
        "layers":[{"material":"typed-r","place":"through"}]}],
    "bills":{"list":[{"id":5}]},"what_if":[{"id":6,"kind":"air","build":"typed-u","air_class":"leaky"}],
    "element":{"rating_basis":"single","heating_effect":"unknown","stock_ft":[]},
    "tube":"pex-1","flow_basis":"typed","next_id":7}}"#;

/// The same with what stands for all that it lacks; as the program wrote it then, too.
pub(super) const LEAST_WHOLE: &str = r#"
{"finrun":1,"job":{"name":"","units":"us","house":{},"station":null,"design_hours":"99","air_class":"tight",
    "air":{"basis":"class","storeys":"one","shelter":"moderate","flue":"none","entries":{}},
    "ground":{"soil":"sand-or-gravel","method":"iso-13370","edge":"none","slab_edge":"uninsulated","entries":{}},
    "rooms":[{"id":1,"name":"","used":"heated","level":"first","shape":"rectangle","entries":{},"surfaces":[
        {"id":2,"kind":"wall","name":"","behind":"ground","u_value":"typed-u","entries":{},"openings":[
            {"id":3,"kind":"door","u_value":"typed-u","entries":{}}],"wall_use":"as-needed","fixed":[]}],
        "zone":0,"branch":0,"route":[],"diverters":"one","shut_off":"open","mass":"as-house"}],
    "spaces":[],
    "assemblies":[{"id":4,"name":"","position":"wall","framing":"none","entries":{},
        "layers":[{"material":"typed-r","place":"through","entries":{}}]}],
    "bills":{"fuel":"natural-gas-therm","entries":{},"list":[{"id":5,"from":"","to":"","entries":{}}]},
    "certainty":{},
    "element":{"rating_basis":"single","heating_effect":"unknown","entries":{},"points":[],"stock_ft":[],
        "stock":[],"objective":"closest"},"prices":{},
    "sized_prices":[],"spare":{},"cutting":{"sticks":"10-and-20-ft","entries":{}},
    "tube":"pex-1","flow_basis":"typed","circuit":{},"part":{},"pipe_cover":"bare","zoning":"valves",
    "pump":{"kind":{"typical":"small"},"set":"one","points":[]},"zones":[],
    "plant":{"boiler":"non-condensing","tank":"none","metal":"copper","valve":"motor","antifreeze":"none",
        "entries":{}},"control":{"supply":"fixed","mass":"light","entries":{}},"progress":{"steps":[],"measured":{},"spots":[]},
    "what_if":[{"id":6,"kind":"air","counted":"on","whose":"house","build":"typed-u","leaks":"class",
        "air_class":"leaky","name":"","level":"first","outside":"two","entries":{}}],
    "existing":{"standing":"planned","ran":"a-while"},"next_id":7}}"#;

/// What a file must have, by place; items of lists without their number.
pub(super) const NEEDED: &str = "finrun job job.name job.units job.air_class job.rooms job.element job.tube
    job.flow_basis job.next_id
    job.station.state job.station.name job.station.elevation_m job.station.t99_f job.station.t996_f
    job.station.mean_f job.station.coldest_month_f job.station.degree_days_65_f job.station.wind_mph
    job.rooms[].id job.rooms[].name job.spaces[].id job.spaces[].name
    job.rooms[].surfaces[].id job.rooms[].surfaces[].kind job.rooms[].surfaces[].behind
    job.rooms[].surfaces[].u_value
    job.spaces[].surfaces[].id job.spaces[].surfaces[].kind job.spaces[].surfaces[].behind
    job.spaces[].surfaces[].u_value
    job.rooms[].surfaces[].openings[].id job.rooms[].surfaces[].openings[].kind
    job.rooms[].surfaces[].openings[].u_value
    job.assemblies[].id job.assemblies[].name job.assemblies[].position job.assemblies[].framing
    job.assemblies[].layers[].material job.assemblies[].layers[].place
    job.bills.list[].id
    job.rooms[].route[].kind job.zones[].id job.zones[].arrangement job.zones[].main job.zones[].pipe
    job.rooms[].surfaces[].fixed[].run job.rooms[].surfaces[].fixed[].pieces_ft job.element.stock[].feet
    job.sized_prices[].tube
    job.progress.steps[].step job.progress.spots[].room
    job.what_if[].id job.what_if[].kind job.what_if[].build job.what_if[].air_class
    job.element.rating_basis job.element.heating_effect job.element.stock_ft";
