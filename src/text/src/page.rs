//! Headings, buttons and sentences of the page; here the fixed ones.

mod about;
mod house;
mod shell;
mod water;

pub use about::ABOUT;
pub use house::*;
pub use shell::*;
pub use water::*;

/// Declares fixed sentences.
macro_rules! words {
    ($($name:ident: $text:literal;)+) => {$(
        pub const fn $name() -> &'static str { $text }
    )+

        /// All of them with their names, for whoever checks or translates them.
        pub const WORDS: &[(&str, &str)] = &[$((stringify!($name), $text)),+];
    };
}

words! {
    app_name: "Finrun";
    app_job: "Hot-water baseboard for your house: heat loss, lengths, and a loop that works.";
    skip_to_content: "Skip to content";

    jobs_title: "Jobs";
    new_job: "New job";
    new_job_name: "My house";
    demos: "Houses to look around in";
    demo_note: "Of our own invention; their numbers are invented too.";
    demo_bungalow: "Bungalow on a slab";
    demo_two_storey: "Two storeys, basement, garage and attic";
    demo_cottage: "Cottage over a crawl space";
    open_file: "Open a job file";
    no_jobs: "Nothing here yet. Start with a new job, or look around in a house of ours.";
    copy: "Copy";
    rename: "Rename";
    delete: "Delete";
    undo_delete: "Bring it back";
    download: "Download";
    job_name: "Name of the job";
    kept_here: "Jobs are kept in this browser, on this device. Download the ones you cannot lose.";
    cannot_open: "Cannot be opened";
    download_raw: "Download what is stored";

    station_rooms: "Rooms";
    station_heat_loss: "Heat loss";
    station_lengths: "Lengths";
    station_loop: "Loop";
    section_place: "Place and climate";
    section_air: "Air";
    section_ground: "Ground";
    section_assemblies: "Own assemblies";
    section_certainty: "How sure";
    section_bills: "Against the bills";
    stations: "Stations of this job";

    undo: "Undo";
    redo: "Redo";
    units: "Units";
    units_us: "°F, ft";
    units_si: "°C, m";
    saved: "saved";
    saving: "saving …";
    not_saved: "not saved";
    last_good: "These results are from before: a field cannot be read.";
    show_field: "Show the field";
    another_tab: "This job was changed in another tab. Nothing is saved here until you choose.";
    take_theirs: "Show the other one";
    keep_mine: "Keep mine";
    update_waiting: "A new version of Finrun is ready.";
    update_now: "Save and reload";
    offline_ready: "Ready to work offline";
    offline_pending: "Getting ready to work offline …";
    offline_failed: "This browser does not keep the page for offline use.";
    safety: "Safety";
    about: "About";
    back: "Back";

    house: "The house";
    rooms_order: "Rooms, in the order in which the water passes them";
    add_room: "Add a room";
    new_room_name: "Name of the new room";
    no_rooms: "No rooms yet. Name the first one the water will reach.";
    change: "Change";
    remove: "Remove";
    earlier: "Earlier";
    later: "Later";
    room_name_label: "Name";
    size: "Size";
    more_of_room: "Shape, temperature and air";
    pipe_to_room: "Pipe to this room";
    surfaces: "Walls, ceiling, floor";
    surfaces_note: "Enter what lies between this room and somewhere colder, and every wall that baseboard may stand on.";
    add_four_walls: "Add its four walls";
    add_outside_wall: "Add an outside wall";
    add_inside_wall: "Add an inside wall";
    add_ceiling: "Add a ceiling";
    add_floor: "Add a floor";
    add_window: "Add a window";
    add_door: "Add a door";
    which_side: "Which wall (north, street side …)";
    more_of_surface: "Area, free length";
    done_room: "Done with this room";
    no_such_room: "This room is gone. Undo brings it back.";
    next_room: "Next room";
    complete: "complete";
    nothing_between: "no surfaces yet";

    house_loses: "on the design day";
    no_load_yet: "Enter the outdoor temperature and a room, and its heat loss stands here.";
    path_air: "Air that leaks in";
    plans: "Plan by storey";
    room: "Room";
    floor_word: "Floor";
    load: "Load";
    per_area_short: "Per floor";
    band_head: "10 to 90 %";
    room_by_room: "Room by room";
    measure_next: "Measure this next";
    ranges: "How far off each kind of input may be";
    certainty_method: "Every input's 10 to 90 % range is carried through to the load by exact derivatives, to first order; inputs are taken as independent of each other.";
    zip_or_town: "ZIP code or town";
    zip_or_town_note: "Stations are airports and weather offices; type a larger town nearby if yours is not found.";
    outside_the_us: "Stations are in the United States alone, since no design data for other countries may be passed on freely. Elsewhere type the temperatures: your national standard or building authority publishes them.";
    chosen_station: "Chosen station";
    forget_station: "Choose none";
    stations_coming: "The table of stations is on its way …";
    no_such_place: "No station of that name. Try a larger town nearby, or a ZIP code.";
    neighbours: "Nearby:";
    choose: "Choose";
    assemblies_note: "Built up here once, then found in every list where a wall, ceiling or floor is built. Give it a name that says what it is.";
    add_assembly: "Add an assembly";
    assembly_name_label: "Name of the assembly";
    layers_note: "From inside to outside. Air films are added.";
    add_layer: "Add a layer";
    or_typed: "Or type its value";
    no_u_yet: "no value yet";
    u_from_layers: "How the U follows from the layers";
    bills: "Bills";
    bills_note: "From one reading or filling to the next. Four or more, with a mild month among them, tell the most.";
    add_bill: "Add a bill";
    bills_heating: "What was heated with";
    bills_need_a_station: "Choose a climate station first: bills are held against its year.";
    no_bills_yet: "Add the fuel bills of a winter, and the loss they tell of stands here beside the calculated one.";
    notices: "Notices of the data's owners";
    spaces: "Unheated spaces";
    spaces_note: "Attic, garage, crawl space, cellar: each finds its own temperature between the rooms beside it and outdoors.";
    no_station: "No station chosen yet";
    plan_place: "Place on the plan";
    add_shell: "Add walls, ceiling and floor";
    air_leaked: "Outdoor air through gaps on the design day, with what fans draw in";
    leaks: "How it leaks";
    drives: "What drives the air";
    fans: "Fans";
    two_methods: "The F-factor takes the whole difference to the design day, and so comes out well above ISO 13370, for which the ground stays warmer.";
    path_ventilation: "Air that fans bring in, less the heat recovered";
    from_neighbour: "To the room next door";
    path_by_path: "Path by path";
    per_area: "Load on each part of the floor";

    element: "The baseboard element";
    element_note: "As the maker's label or table says. Invented or remembered numbers give invented lengths.";
    rating: "Rating";
    heating_effect_question: "Is the rating certified with a heating effect?";
    stock: "Pieces your shop has";
    table_row_add: "Add a row";
    more_of_element: "Derating, bare tube, end caps";
    needs: "needs";
    gets: "gets";
    no_element: "No element";
    finned_needed: "finned length needed at this water";
    short_word: "short by";
    over_load: "over the load";
    rule_of_thumb: "load over rated output would say";
    no_lengths_yet: "Lengths follow from the rooms.";
    in_pieces: "in";
    water_in_out: "water";

    follow_the_water: "Follow the water";
    loop_settings: "Tube, water and flow";
    tube_label: "Tube";
    flow_from: "How is the flow fixed?";
    pipes: "Pipes and boiler room";
    boiler: "Boiler";
    drop_word: "drop";
    length_word: "Length";
    head_word: "Head";
    supply: "supply";
    back_to_boiler: "return";
    checks: "Checks";
    remedies: "Ways out";
    numbers: "The same in numbers";
    stretch: "Stretch";
    water_in: "Water in";
    water_out: "Water out";
    heat: "Heat";
    boiler_room: "Boiler room";
    back_pipe: "Pipe back";
    flow: "Flow";
    velocity: "Velocity";
    head: "Head for the circulator";
    drop: "Temperature drop";
    boiler_gives: "The boiler gives";
    no_loop_yet: "The loop follows from the rooms.";
    symbol_circulator: "Circulator";
    symbol_expansion_tank: "Expansion tank";
    symbol_air_eliminator: "Air eliminator";
    symbol_flow_check: "Flow check";
    symbol_zone_valve: "Zone valve";
    symbol_balancing_valve: "Balancing valve";
    symbol_diverter_tee: "Diverter tee";
    symbol_shut_valve: "Shut valve";
    water_along: "Water along each circuit";
    temperature_picture: "Water temperature along each circuit, from the circulator on, over the air of its rooms";
    air_of_rooms: "air of the rooms";
    pump_and_system: "Circulator and system";
    circulator_curve: "What the circulator gives";
    the_system: "The system";
    all_zones: "All zones";

    mend_first: "To mend or fill in";
    change_sign: "Change the sign of";
    safety_title: "Before you build";
    about_title: "About Finrun";
    yes: "Yes";
    remove_deleted: "Close";
    no_such_job: "That job is not in this browser.";
    storage_full: "The browser's storage is full or blocked. Download the job to keep it.";
    file_too_large: "That file is too large for a job. Choose a Finrun job file.";
    result_line: "Result";
    unit_factor: "(units)";
    done_with_errors: "This room is not complete yet.";
    removed_room: "A room that is gone";
    removed_assembly: "An assembly that is gone";
}
