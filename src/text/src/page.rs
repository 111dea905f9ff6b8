//! Headings, buttons and sentences of the page; here the fixed ones.

mod about;
mod house;
mod shell;
mod water;

pub use about::about_paragraphs;
pub use house::*;
pub use shell::*;
pub use water::*;

use crate::language::sentences;

sentences! { WORDS;
    app_name: "Finrun", "Finrun";
    app_job: "Hot-water baseboard for your house: heat loss, lengths, and a loop that works.",
        "Calefacción por zócalo con agua caliente para su casa: pérdida de calor, largos y un circuito que funciona.";
    skip_to_content: "Skip to content", "Ir al contenido";

    jobs_title: "Jobs", "Proyectos";
    new_job: "New job", "Proyecto nuevo";
    new_job_name: "My house", "Mi casa";
    demos: "Houses to look around in", "Casas de ejemplo para mirar";
    demo_note: "Of our own invention; their numbers are invented too.",
        "Las inventamos nosotros; sus números también son inventados.";
    demo_bungalow: "Bungalow on a slab", "Casa de un piso sobre losa";
    demo_two_storey: "Two storeys, basement, garage and attic", "Dos pisos, sótano, garaje y ático";
    demo_cottage: "Cottage over a crawl space", "Casita sobre un espacio de poca altura";
    open_file: "Open a job file", "Abrir un proyecto guardado";
    no_jobs: "Nothing here yet. Start with a new job, or look around in a house of ours.",
        "Todavía no hay nada aquí. Empiece un proyecto nuevo, o mire una de nuestras casas de ejemplo.";
    copy: "Copy", "Copiar";
    rename: "Rename", "Renombrar";
    delete: "Delete", "Borrar";
    undo_delete: "Bring it back", "Recuperarlo";
    download: "Download", "Descargar";
    job_name: "Name of the job", "Nombre del proyecto";
    kept_here: "Jobs are kept in this browser, on this device. Download the ones you cannot lose.",
        "Los proyectos se guardan en este navegador, en este aparato. Descargue los que no pueda perder.";
    cannot_open: "Cannot be opened", "No se puede abrir";
    download_raw: "Download what is stored", "Descargar lo guardado";

    station_rooms: "Rooms", "Habitaciones";
    station_heat_loss: "Heat loss", "Pérdida";
    station_lengths: "Lengths", "Largos";
    station_loop: "Loop", "Circuito";
    section_place: "Place and climate", "Lugar y clima";
    section_air: "Air", "Aire";
    section_ground: "Ground", "Suelo";
    section_assemblies: "Own assemblies", "Construcciones propias";
    section_certainty: "How sure", "Qué tan seguro";
    section_bills: "Against the bills", "Comparar con facturas";
    section_prices: "Prices", "Precios";
    section_piping: "Zones and piping", "Zonas y tubería";
    section_circulator: "Circulator and balancing", "Circulador y balanceo";
    section_plant: "Boiler and fill", "Caldera y llenado";
    section_drawings: "Drawings", "Dibujos";
    section_install: "Installation", "Instalación";
    section_commission: "Commissioning sheet", "Hoja de puesta en marcha";
    section_compare: "Compare arrangements", "Comparar arreglos";
    section_share: "Share", "Compartir";
    section_materials: "Materials list", "Lista de materiales";
    materials_note: "Counted from the design: each line says what it is for. Prices, shares to spare and the saw's cut are those of the page of prices. Rules of thumb in it, such as valves of a loop, brackets, hangers, vents, solder and gas by the joint, are common practice or judgement without a source; local codes and makers' words stand above them.",
        "Contada a partir del diseño: cada renglón dice para qué es. Los precios, lo de reserva y el corte de la sierra son los de la página de precios. Las reglas prácticas que contiene, como las válvulas de un circuito, soportes, colgadores, purgadores, soldadura y gas por unión, son práctica común o criterio propio, sin fuente; los códigos locales y lo que digan los fabricantes están por encima.";
    no_materials_yet: "The list comes with the first room that has a heat loss.",
        "La lista aparece con la primera habitación que tenga pérdida de calor.";
    print_list: "Print the list", "Imprimir la lista";
    save_csv: "Save as CSV", "Guardar como CSV";
    head_what_and_why: "What, and why", "Qué y por qué";
    head_buy: "To buy", "Comprar";
    head_price_and_sum: "Sum, and price", "Suma y precio";
    totals_title: "Sums", "Sumas";
    totals_by_group: "By kind of material, as bought", "Por clase de material, como se compra";
    totals_by_room: "By room, as needed", "Por habitación, lo necesario";
    totals_by_circuit: "By circuit, as needed", "Por circuito, lo necesario";
    total_word: "All together", "Todo junto";
    cut_plan_title: "Cut plan", "Plan de corte";
    cut_plan_note: "Lengths are rounded up to a sixteenth of an inch and hold no allowance for what goes into fittings: measure again before you cut. Hatched is what is left.",
        "Los largos se redondean hacia arriba a un dieciseisavo de pulgada y no incluyen lo que entra en las conexiones: mida otra vez antes de cortar. Lo rayado es lo que sobra.";
    head_stick: "From", "De";
    head_cut: "Cut", "Corte";
    head_cut_for: "For", "Para";
    offcut_word: "what is left", "lo que sobra";
    whole_house: "The house", "La casa";
    stations: "Stations of this job", "Páginas de este proyecto";

    undo: "Undo", "Deshacer";
    redo: "Redo", "Rehacer";
    units: "Units", "Unidades";
    units_us: "°F, ft", "°F, pies";
    units_si: "°C, m", "°C, metros";
    saved: "saved", "guardado";
    saving: "saving …", "guardando …";
    not_saved: "not saved", "no guardado";
    last_good: "These results are from before: a field cannot be read.",
        "Estos resultados son de antes: hay un dato que no se puede leer.";
    show_field: "Show the field", "Mostrar el dato";
    another_tab: "This job was changed in another tab. Nothing is saved here until you choose.",
        "Este proyecto cambió en otra pestaña. Aquí no se guarda nada hasta que usted elija.";
    take_theirs: "Show the other one", "Mostrar el otro";
    keep_mine: "Keep mine", "Conservar el mío";
    update_waiting: "A new version of Finrun is ready.", "Hay una versión nueva de Finrun.";
    update_now: "Save and reload", "Guardar y recargar";
    terms_here: "Words on this page", "Palabras de esta página";
    terms_title: "Words of the trade", "Palabras del oficio";
    all_terms: "All words of the trade", "Todas las palabras del oficio";
    newer_tab: "A newer Finrun wrote this job in another tab. From this tab nothing is saved any more: download what you typed here if you need it, then load the page again.",
        "Un Finrun más nuevo escribió este proyecto en otra pestaña. Desde esta pestaña ya no se guarda nada: descargue lo que escribió aquí si lo necesita y luego vuelva a cargar la página.";
    load_again: "Load again", "Volver a cargar";
    kept_for_good: "This browser has promised to keep the jobs until you delete them.",
        "Este navegador prometió conservar los proyectos hasta que usted los borre.";
    kept_perhaps: "This browser may clear the jobs when it runs short of room or is not used for long: install Finrun, or download what you cannot lose.",
        "Este navegador puede borrar los proyectos cuando le falte espacio o no se use por mucho tiempo: instale Finrun, o descargue lo que no pueda perder.";
    install_title: "Keep Finrun on this device", "Tener Finrun en este aparato";
    install_now: "Install", "Instalar";
    install_words: "On an iPhone or iPad: Share, then Add to Home Screen. On Android: the browser's menu, then Install app or Add to home screen. On a computer: the sign for installing beside the address. What is installed keeps its own jobs: download those of the browser first and open them there.",
        "En un iPhone o iPad: Compartir y luego Agregar a pantalla de inicio. En Android: el menú del navegador y luego Instalar aplicación o Agregar a la pantalla principal. En una computadora: el signo de instalar junto a la dirección. Lo instalado guarda sus propios proyectos: descargue antes los del navegador y ábralos allí.";
    offline_ready: "Ready to work offline", "Listo para trabajar sin conexión";
    offline_pending: "Getting ready to work offline …", "Preparándose para trabajar sin conexión …";
    offline_failed: "This browser does not keep the page for offline use.",
        "Este navegador no guarda la página para usarla sin conexión.";
    safety: "Safety", "Seguridad";
    about: "About", "Acerca de";
    back: "Back", "Volver";

    house: "The house", "La casa";
    rooms_order: "Rooms, in the order in which the water passes them",
        "Habitaciones, en el orden en que el agua pasa por ellas";
    add_room: "Add a room", "Agregar habitación";
    new_room_name: "Name of the new room", "Nombre de la habitación nueva";
    no_rooms: "No rooms yet. Name the first one the water will reach.",
        "Todavía no hay habitaciones. Escriba el nombre de la primera a la que llega el agua.";
    change: "Change", "Cambiar";
    remove: "Remove", "Quitar";
    earlier: "Earlier", "Antes";
    later: "Later", "Después";
    room_name_label: "Name", "Nombre";
    size: "Size", "Medidas";
    more_of_room: "Shape, temperature and air", "Forma, temperatura y aire";
    pipe_to_room: "Pipe to this room", "Tubería hasta esta habitación";
    surfaces: "Walls, ceiling, floor", "Paredes, techo, piso";
    surfaces_note: "Enter what lies between this room and somewhere colder, and every wall that baseboard may stand on.",
        "Anote lo que hay entre esta habitación y un lugar más frío, y cada pared donde pueda ir zócalo.";
    add_four_walls: "Add its four walls", "Agregar sus cuatro paredes";
    add_outside_wall: "Add an outside wall", "Agregar pared exterior";
    add_inside_wall: "Add an inside wall", "Agregar pared interior";
    add_ceiling: "Add a ceiling", "Agregar techo";
    add_floor: "Add a floor", "Agregar piso";
    add_window: "Add a window", "Agregar ventana";
    add_door: "Add a door", "Agregar puerta";
    which_side: "Which wall (north, street side …)", "Qué pared (norte, lado de la calle …)";
    more_of_surface: "Area, free length", "Área, largo libre";
    done_room: "Done with this room", "Habitación lista";
    no_such_room: "This room is gone. Undo brings it back.", "Esta habitación ya no existe. Deshacer la recupera.";
    next_room: "Next room", "Habitación siguiente";
    complete: "complete", "completa";
    nothing_between: "no surfaces yet", "sin superficies todavía";

    house_loses: "on the design day", "en el día de diseño";
    no_load_yet: "Enter the outdoor temperature and a room, and its heat loss stands here.",
        "Escriba la temperatura exterior y una habitación, y aquí aparece su pérdida de calor.";
    path_air: "Air that leaks in", "Aire que se cuela";
    plans: "Plan by storey", "Plano por piso";
    room: "Room", "Habitación";
    floor_word: "Floor", "Piso";
    load: "Load", "Carga";
    per_area_short: "Per floor", "Por área";
    band_head: "10 to 90 %", "10 a 90 %";
    room_by_room: "Room by room", "Habitación por habitación";
    measure_next: "Measure this next", "Lo próximo que conviene medir";
    ranges: "How far off each kind of input may be", "Cuánto puede fallar cada clase de dato";
    certainty_method: "Every input's 10 to 90 % range is carried through to the load by exact derivatives, to first order; inputs are taken as independent of each other.",
        "El intervalo de 10 a 90 % de cada dato se lleva hasta la carga con derivadas exactas, a primer orden; los datos se toman como independientes entre sí.";
    zip_or_town: "ZIP code or town", "Código ZIP o ciudad";
    zip_or_town_note: "Stations are airports and weather offices; type a larger town nearby if yours is not found.",
        "Las estaciones son aeropuertos y oficinas meteorológicas; escriba una ciudad cercana más grande si no aparece la suya.";
    outside_the_us: "Stations are in the United States alone, since no design data for other countries may be passed on freely. Elsewhere type the temperatures: your national standard or building authority publishes them.",
        "Solo hay estaciones en los Estados Unidos, porque los datos de diseño de otros países no se pueden repartir libremente. En otros lugares escriba las temperaturas: las publica la norma nacional o la autoridad de construcción.";
    chosen_station: "Chosen station", "Estación elegida";
    forget_station: "Choose none", "No elegir ninguna";
    stations_coming: "The table of stations is on its way …", "La tabla de estaciones está en camino …";
    no_such_place: "No station of that name. Try a larger town nearby, or a ZIP code.",
        "No hay estación con ese nombre. Pruebe con una ciudad cercana más grande, o con un código ZIP.";
    neighbours: "Nearby:", "Cerca:";
    choose: "Choose", "Elegir";
    assemblies_note: "Built up here once, then found in every list where a wall, ceiling or floor is built. Give it a name that says what it is.",
        "Se arman aquí una vez y luego aparecen en cada lista donde se elige cómo está hecha una pared, un techo o un piso. Póngale un nombre que diga qué es.";
    add_assembly: "Add an assembly", "Agregar construcción";
    assembly_name_label: "Name of the assembly", "Nombre de la construcción";
    layers_note: "From inside to outside. Air films are added.",
        "De adentro hacia afuera. Las películas de aire se suman solas.";
    add_layer: "Add a layer", "Agregar capa";
    or_typed: "Or type its value", "O escriba su valor";
    no_u_yet: "no value yet", "sin valor todavía";
    u_from_layers: "How the U follows from the layers", "Cómo sale el valor U de las capas";
    bills: "Bills", "Facturas";
    bills_note: "From one reading or filling to the next. Four or more, with a mild month among them, tell the most.",
        "De una lectura o llenado al siguiente. Cuatro o más, con un mes templado entre ellas, dicen más.";
    add_bill: "Add a bill", "Agregar factura";
    bills_heating: "What was heated with", "Con qué se calentó";
    bills_need_a_station: "Choose a climate station first: bills are held against its year.",
        "Elija primero una estación de clima: las facturas se comparan con su año.";
    no_bills_yet: "Add the fuel bills of a winter, and the loss they tell of stands here beside the calculated one.",
        "Agregue las facturas de combustible de un invierno, y aquí aparece la pérdida que indican junto a la calculada.";
    notices: "Notices of the data's owners", "Avisos de los dueños de los datos";
    spaces: "Unheated spaces", "Espacios sin calefacción";
    spaces_note: "Attic, garage, crawl space, cellar: each finds its own temperature between the rooms beside it and outdoors.",
        "Ático, garaje, espacio de poca altura, sótano: cada uno halla su propia temperatura entre las habitaciones vecinas y el exterior.";
    no_station: "No station chosen yet", "Todavía no hay estación elegida";
    plan_place: "Place on the plan", "Lugar en el plano";
    add_shell: "Add walls, ceiling and floor", "Agregar paredes, techo y piso";
    air_leaked: "Outdoor air through gaps on the design day, with what fans draw in",
        "Aire exterior que entra por rendijas en el día de diseño, con el que aspiran los ventiladores";
    leaks: "How it leaks", "Por dónde se cuela";
    drives: "What drives the air", "Qué empuja el aire";
    fans: "Fans", "Ventiladores";
    two_methods: "The F-factor takes the whole difference to the design day, and so comes out well above ISO 13370, for which the ground stays warmer.",
        "El factor F toma toda la diferencia hasta el día de diseño, y por eso da bastante más que ISO 13370, para la cual el suelo se mantiene más caliente.";
    path_ventilation: "Air that fans bring in, less the heat recovered",
        "Aire que meten los ventiladores, menos el calor recuperado";
    from_neighbour: "To the room next door", "A la habitación vecina";
    path_by_path: "Path by path", "Camino por camino";
    per_area: "Load on each part of the floor", "Carga por área de piso";

    element: "The baseboard element", "El elemento de zócalo";
    element_note: "As the maker's label or table says. Invented or remembered numbers give invented lengths.",
        "Como lo dice la etiqueta o la tabla del fabricante. Números inventados o de memoria dan largos inventados.";
    rating: "Rating", "Potencia nominal";
    heating_effect_question: "Is the rating certified with a heating effect?",
        "¿La potencia nominal está certificada con efecto de calefacción?";
    stock: "Pieces your shop has", "Piezas que tiene su tienda";
    prices_and_counts: "Price and count of each length", "Precio y cantidad de cada largo";
    prices_and_counts_note: "Blank: without a price, as many in the shop as are wanted, none bought already. What was bought already costs nothing more and is used first.",
        "En blanco: sin precio, en la tienda hay cuantas se quieran, ninguna comprada. Lo ya comprado no cuesta nada más y se usa primero.";
    prices_note: "Your own prices, all in one currency, with or without tax as you like. What has no price is counted, not guessed.",
        "Sus propios precios, todos en una misma moneda, con o sin impuesto como guste. Lo que no tiene precio se cuenta, no se adivina.";
    keep_prices: "Keep these prices for other jobs", "Guardar estos precios para otros proyectos";
    keep_prices_instead: "Keep these prices instead", "Guardar estos precios en su lugar";
    fill_in_prices: "Fill in from my kept prices", "Llenar con mis precios guardados";
    forget_prices: "Forget my kept prices", "Olvidar mis precios guardados";
    prices_forgotten: "The kept prices are forgotten. Those of this job stay.",
        "Los precios guardados se olvidaron. Los de este proyecto se quedan.";
    nothing_changed: "Nothing was changed.", "No cambió nada.";
    take_listed: "Take those on the list", "Tomar los de la lista";
    save_prices: "Save prices as CSV", "Guardar precios como CSV";
    open_prices: "Open CSV", "Abrir CSV";
    prices_file_note: "A file for spreadsheets: one row a price. The key and the unit say which; remarks of yours are not read.",
        "Un archivo para hojas de cálculo: un renglón por precio. La clave y la unidad dicen cuál es; sus comentarios no se leen.";
    prices_of_jobs: "For other jobs, and in a file", "Para otros proyectos, y en un archivo";
    prices_by_size: "Prices by size", "Precios por medida";
    prices_by_size_note: "In the sizes of tube that this job uses or has prices for. Blank: the price for any size.",
        "En las medidas de tubo que este proyecto usa o que tienen precio. En blanco: el precio para cualquier medida.";
    prices_of_remedies: "Ways out of a shortage", "Soluciones si falta calor";
    to_spare: "To spare", "De reserva";
    to_spare_note: "A share of what is needed that is bought beyond it, whole pieces at least. Blank: nothing.",
        "Una parte de lo necesario que se compra de más, por lo menos piezas enteras. En blanco: nada.";
    cutting: "Cutting pipe", "Corte de tubería";
    keep_pieces: "Keep these pieces", "Fijar estas piezas";
    let_pieces_go: "Let them go", "Soltarlas";
    kept_wrong: "Kept pieces that no longer fit", "Piezas fijadas que ya no caben";
    table_row_add: "Add a row", "Agregar renglón";
    more_of_element: "Derating, bare tube, end caps", "Reducción, tubo sin aletas, tapas finales";
    needs: "needs", "necesita";
    gets: "gets", "recibe";
    beside: "beside", "además de";
    from_elsewhere: "from elsewhere", "de otra fuente";
    no_element: "No element", "Sin elemento";
    finned_needed: "finned length needed at this water", "largo con aletas necesario con esta agua";
    short_word: "short by", "le faltan";
    over_load: "over the load", "sobre la carga";
    rule_of_thumb: "load over rated output would say", "carga entre potencia nominal daría";
    no_lengths_yet: "Lengths follow from the rooms.", "Los largos salen de las habitaciones.";
    in_pieces: "in", "en";
    water_in_out: "water", "agua";

    follow_the_water: "Follow the water", "Siga el agua";
    loop_settings: "Water and flow", "Agua y caudal";
    piping: "Piping", "Tubería";
    add_zone: "Add a zone", "Agregar zona";
    zone_name_label: "Name of the zone", "Nombre de la zona";
    zone_rooms: "Its rooms, in the order in which the water passes them",
        "Sus habitaciones, en el orden en que el agua pasa por ellas";
    zone_rooms_note: "Drag a room by its handle, or use the buttons and lists.",
        "Arrastre una habitación por su asa, o use los botones y las listas.";
    zone_empty: "No room hangs here. Move one here by its list or its handle.",
        "Aquí no hay ninguna habitación. Mueva una aquí con su lista o su asa.";
    trunk: "Pipe between the boiler and where the rooms' pipes begin",
        "Tubería entre la caldera y donde empiezan las de las habitaciones";
    where_it_hangs: "Tees and shut-off", "Tes y cierre";
    from_elements: "of element", "de elemento";
    return_default: "Unless a room's own page says otherwise", "Salvo que la página de una habitación diga otra cosa";
    way_there: "The way there, step by step", "El camino hasta allí, paso por paso";
    way_there_note: "Along the walls and round corners the pipe stays in the enclosure and warms the room.",
        "A lo largo de las paredes y en las esquinas la tubería va dentro de la carcasa y calienta la habitación.";
    add_step: "Add a step", "Agregar paso";
    other_pipe: "Other pipe", "Otra tubería";
    valves_and_parts: "Valves, tees and efficiency", "Válvulas, tes y eficiencia";
    circulator: "Circulator", "Circulador";
    curve_points: "Points of its curve", "Puntos de su curva";
    curve_note: "From the maker's chart, from no flow to the last: three points or more. The head falls as the flow grows.",
        "De la gráfica del fabricante, desde caudal cero hasta el último: tres puntos o más. La altura baja cuando el caudal crece.";
    zones_running: "Zones together and alone", "Zonas juntas y solas";
    calling: "Calling", "Piden calor";
    all_zones: "All zones", "Todas las zonas";
    whole_system: "The whole system", "Todo el sistema";
    try_zones: "Try any of them", "Pruebe las que quiera";
    draws: "Draws", "Consume";
    head_short: "Head", "Altura";
    fastest: "Fastest water", "Agua más rápida";
    balancing: "Balancing", "Balanceo";
    circuit_word: "Circuit", "Circuito";
    meant: "Meant", "Previsto";
    now: "Now", "Ahora";
    valve_takes: "Valve takes", "Toma la válvula";
    valve_order_word: "In turn", "Orden";
    flow_coefficient: "Cv", "Cv";
    return_word: "Return", "Retorno";
    return_reads: "Return reads", "Lectura del retorno";
    balancing_how: "Begin with every valve open and set the most throttled first; the last one stays open. Read the return of each circuit when the system has run long enough that no reading changes, and throttle further where the return is warmer than here, open where it is cooler.",
        "Empiece con todas las válvulas abiertas y ajuste primero la que más se cierra; la última queda abierta. Lea el retorno de cada circuito cuando el sistema haya trabajado hasta que ninguna lectura cambie; cierre más donde el retorno esté más caliente que aquí y abra donde esté más frío.";
    one_circuit: "One circuit has the whole flow: there is nothing to balance.",
        "Un solo circuito tiene todo el caudal: no hay nada que balancear.";
    not_fitted: "No balancing valves are chosen: the column of the valves says what they would have to take.",
        "No se eligieron válvulas de balanceo: la columna de las válvulas dice cuánto tendrían que tomar.";
    side_by_side: "Every arrangement side by side", "Todos los arreglos lado a lado";
    share_note: "Nothing is sent anywhere by this page: the whole job is in the file, in the link, or in the code, and you pass it on yourself.",
        "Esta página no envía nada a ninguna parte: el proyecto entero está en el archivo, en el enlace o en el código, y usted mismo lo entrega.";
    share_fact: "as a file, a link or a code", "como archivo, enlace o código";
    share_file: "File", "Archivo";
    share_file_note: "For keeping, and for mail. Whoever gets it opens it from the list of jobs.",
        "Para guardar y para el correo. Quien lo reciba lo abre desde la lista de proyectos.";
    keep_in_place: "Choose where to keep it", "Elegir dónde guardarlo";
    file_kept: "The file is kept where you chose", "El archivo quedó donde usted eligió";
    hand_over_file: "Send the file", "Enviar el archivo";
    share_link: "Link", "Enlace";
    share_link_note: "The job stands behind the # of the address, which no browser sends to a server. Whoever opens it sees the job first and keeps it only on wish; nothing of theirs is replaced.",
        "El proyecto va detrás del # de la dirección, que ningún navegador envía a un servidor. Quien lo abra ve primero el proyecto y lo guarda solo si quiere; nada de lo suyo se reemplaza.";
    no_link_from_a_file: "This page was opened from a file, so there is no address for a link or a QR code. Send the file of the job.",
        "Esta página se abrió desde un archivo, así que no hay dirección para un enlace ni un código QR. Envíe el archivo del proyecto.";
    copy_link: "Copy the link", "Copiar el enlace";
    link_copied: "Link copied", "Enlace copiado";
    link_failed: "This browser cannot pack a link. Send the file.",
        "Este navegador no puede armar un enlace. Envíe el archivo.";
    share_code: "QR code of the link", "Código QR del enlace";
    share_code_note: "For a phone beside you: point its camera here.",
        "Para un teléfono a su lado: apunte aquí su cámara.";
    code_too_long: "The job is too long for a QR code. Send the file or the link.",
        "El proyecto es demasiado largo para un código QR. Envíe el archivo o el enlace.";
    offered_title: "A job that came with a link", "Un proyecto que llegó con un enlace";
    offered_note: "It is not kept yet. Nothing that you have is replaced.",
        "Todavía no está guardado. Nada de lo que usted tiene se reemplaza.";
    offered_same_name: "You have a job of this name already. Both are kept.",
        "Ya tiene un proyecto con este nombre. Se guardan los dos.";
    keep_offered: "Keep it among my jobs", "Guardarlo entre mis proyectos";
    to_the_jobs: "To my jobs", "A mis proyectos";
    unpacking: "Unpacking", "Desempacando";
    link_damaged: "The link is damaged: it was cut off or changed on its way. Ask for it again, or for the file.",
        "El enlace está dañado: se cortó o cambió en el camino. Pídalo otra vez, o pida el archivo.";
    compare_note: "Each row is the whole house designed in that arrangement, with the pieces and valves that it needs. Press a heading to sort by it. What has no price is counted, and not guessed.",
        "Cada renglón es la casa entera diseñada con ese arreglo, con las piezas y válvulas que necesita. Toque un encabezado para ordenar. Lo que no tiene precio se cuenta, no se adivina.";
    compare_one_zone: "Except for the zones as drawn, all rooms are taken together in one zone. Using such a row gives the zones up; Undo brings them back.",
        "Salvo en las zonas como están dibujadas, todas las habitaciones se toman juntas en una zona. Usar un renglón así deja las zonas; Deshacer las recupera.";
    compare_nothing: "The arrangements follow from the rooms.", "Los arreglos salen de las habitaciones.";
    compare_fact: "Cost, power, supply, joints and control, side by side",
        "Costo, consumo, suministro, uniones y control, lado a lado";
    arrangement_word: "Arrangement", "Arreglo";
    use_this: "Use this", "Usar este";
    as_it_is: "As it is now", "Como está ahora";
    keep_row: "Keep", "Apartar";
    let_row_go: "Let go", "Soltar";
    kept_rows: "Kept beside each other", "Apartados uno junto al otro";
    kept_note: "Keep up to two rows to see what differs.", "Aparte hasta dos renglones para ver en qué difieren.";
    difference_word: "Difference", "Diferencia";
    other_circulators: "Another circulator in its place", "Otro circulador en su lugar";
    as_set_now: "As set now", "Como está puesto ahora";
    no_rest: "finds no balance here", "aquí no halla equilibrio";
    practice_title: "Beside common practice", "Frente a la práctica común";
    practice_note: "Rules of thumb of the trade, without a source. Where they and this system differ, neither is wrong by that alone.",
        "Reglas prácticas del oficio, sin fuente. Donde ellas y este sistema difieren, ninguno de los dos está mal solo por eso.";
    rule_word: "Rule", "Regla";
    practice_word: "Common practice", "Práctica común";
    this_system: "This system", "Este sistema";
    needed_output: "The boiler must give", "La caldera debe dar";
    system_holds: "The system holds", "El sistema contiene";
    fill_cold: "Fill pressure, cold", "Presión de llenado, en frío";
    tank_least: "Expansion tank, at least", "Tanque de expansión, por lo menos";
    more_of_plant: "Water, burner, tank and control", "Agua, quemador, tanque y control";
    reset_title: "Outdoor reset", "Compensación exterior";
    reset_note: "The supply that just heats every room, from the design day to the mildest on which the house is heated. A control is set to a straight line: room + shift + slope × (room − outdoors).",
        "El suministro que apenas calienta todas las habitaciones, desde el día de diseño hasta el más templado en que se calienta la casa. Un control se ajusta a una recta: habitación + desplazamiento + pendiente × (habitación − exterior).";
    outdoors_word: "Outdoors", "Exterior";
    air_eliminator: "Air eliminator: in the supply pipe at the boiler's outlet, where the water is hottest. Behind it the expansion tank, and then the circulator, which so pumps away from the tank: the pressure at the tank stays, and rises everywhere else.",
        "Eliminador de aire: en el tubo de suministro a la salida de la caldera, donde el agua está más caliente. Detrás va el tanque de expansión y luego el circulador, que así bombea alejándose del tanque: la presión en el tanque se mantiene y sube en todo lo demás.";
    to_heed: "To heed here", "Cuidado aquí";
    on_site: "On site", "En la obra";
    install_note: "From this job, in working order. Local codes and the makers' instructions stand above it; what the law keeps for licensed hands stays with them.",
        "Sale de este proyecto, en orden de trabajo. Los códigos locales y las instrucciones de los fabricantes están por encima; lo que la ley reserva a manos con licencia sigue siendo de ellas.";
    no_steps_yet: "The steps follow from the rooms and the loop.",
        "Los pasos salen de las habitaciones y del circuito.";
    all_phases: "Phases", "Etapas";
    step_more: "Note, photo, date", "Nota, foto, fecha";
    step_note: "Note", "Nota";
    step_photo: "Number of the photo", "Número de la foto";
    step_date: "Date", "Fecha";
    commission_note: "With every zone calling and the water hot, once no reading changes. A blank is not judged. Thermometers on the pipe under insulation read to about 2 °F (1 °C), and the judgement allows for that.",
        "Con todas las zonas pidiendo calor y el agua caliente, cuando ninguna lectura cambie. Lo que queda en blanco no se juzga. Los termómetros sobre el tubo, bajo aislamiento, leen con unos 2 °F (1 °C) de error, y el juicio lo toma en cuenta.";
    readings_whole: "Pressures and weather", "Presiones y clima";
    readings_circuits: "Circuits", "Circuitos";
    readings_circuits_note: "Supply where the circuit leaves the boiler room, return where it comes back, before it joins others.",
        "Suministro donde el circuito sale del cuarto de caldera, retorno donde vuelve, antes de juntarse con otros.";
    readings_rooms: "Rooms", "Habitaciones";
    readings_rooms_note: "In the middle of the room, about 5 ft (1.5 m) up, out of the sun.",
        "En medio de la habitación, a unos 5 pies (metro y medio) de altura, fuera del sol.";
    calculated: "calculated", "calculado";
    planned_for: "planned for", "previsto para";
    valve_open: "open", "abierta";
    hand_over: "Hand-over", "Entrega";
    care: "Care", "Cuidado";
    hand_over_said: "The system was shown, with its gauge, shut-offs, switch and thermostats. Findings above that were not mended are known to both.",
        "Se mostró el sistema, con su manómetro, válvulas de paso, interruptor y termostatos. Ambos conocen los defectos de arriba que no se corrigieron.";
    signed_by_installer: "Installed by: name, signature, date", "Instalado por: nombre, firma, fecha";
    signed_by_licensed: "Boiler and electrical by: name, licence, signature, date",
        "Caldera y electricidad por: nombre, licencia, firma, fecha";
    signed_by_owner: "Received by: name, signature, date", "Recibido por: nombre, firma, fecha";
    print_sheet: "Print", "Imprimir";
    tube_label: "Tube", "Tubo";
    flow_from: "How is the flow fixed?", "¿Cómo se fija el caudal?";
    pipes: "Pipes and boiler room", "Tuberías y cuarto de caldera";
    boiler: "Boiler", "Caldera";
    drop_word: "drop", "de caída";
    length_word: "Length", "Largo";
    head_word: "Head", "Altura";
    supply: "supply", "suministro";
    back_to_boiler: "return", "retorno";
    checks: "Checks", "Comprobaciones";
    remedies: "Ways out", "Soluciones";
    working_out: "Working out what would help and what it costs…", "Calculando qué ayudaría y cuánto cuesta…";
    oversize_title: "What is built beyond the loads", "Lo que se instala más allá de las cargas";
    oversize_note: "Whole pieces are longer than what is needed, and a margin asks for more. Both cost feet; in return cooler water does.",
        "Las piezas enteras son más largas de lo necesario, y un margen pide más. Las dos cosas cuestan pies; a cambio basta agua menos caliente.";
    pieces_add: "Pieces add", "Agregan las piezas";
    pieces_give: "They give", "Dan las piezas";
    margin_gives: "Margin", "Margen";
    return_exact: "Return, were elements just long enough", "Retorno, si los elementos fueran apenas suficientes";
    numbers: "The same in numbers", "Lo mismo en números";
    stretch: "Stretch", "Tramo";
    water_in: "Water in", "Entra agua a";
    water_out: "Water out", "Sale agua a";
    heat: "Heat", "Calor";
    boiler_room: "Boiler room", "Cuarto de caldera";
    back_pipe: "Pipe back", "Tubería de retorno";
    flow: "Flow", "Caudal";
    velocity: "Velocity", "Velocidad";
    head: "Head for the circulator", "Altura para el circulador";
    drop: "Temperature drop", "Caída de temperatura";
    boiler_gives: "The boiler gives", "La caldera da";
    no_loop_yet: "The loop follows from the rooms.", "El circuito sale de las habitaciones.";
    symbol_circulator: "Circulator", "Circulador";
    symbol_expansion_tank: "Expansion tank", "Tanque de expansión";
    symbol_air_eliminator: "Air eliminator", "Eliminador de aire";
    symbol_flow_check: "Flow check", "Válvula de retención";
    symbol_zone_valve: "Zone valve", "Válvula de zona";
    symbol_balancing_valve: "Balancing valve", "Válvula de balanceo";
    symbol_diverter_tee: "Diverter tee", "Te desviadora";
    symbol_shut_valve: "Shut valve", "Válvula cerrada";
    water_along: "Water along each circuit", "El agua a lo largo de cada circuito";
    temperature_picture: "Water temperature along each circuit, from the circulator on, over the air of its rooms",
        "Temperatura del agua a lo largo de cada circuito, desde el circulador, sobre el aire de sus habitaciones";
    air_of_rooms: "air of the rooms", "aire de las habitaciones";
    pump_and_system: "Circulator and system", "Circulador y sistema";
    circulator_curve: "What the circulator gives", "Lo que da el circulador";
    the_system: "The system", "El sistema";

    mend_first: "To mend or fill in", "Por corregir o llenar";
    change_sign: "Change the sign of", "Cambiar el signo de";
    safety_title: "Before you build", "Antes de construir";
    about_title: "About Finrun", "Acerca de Finrun";
    yes: "Yes", "Sí";
    remove_deleted: "Close", "Cerrar";
    no_such_job: "That job is not in this browser.", "Ese proyecto no está en este navegador.";
    storage_full: "The browser's storage is full or blocked. Download the job to keep it.",
        "El espacio del navegador está lleno o bloqueado. Descargue el proyecto para conservarlo.";
    file_too_large: "That file is too large for a job. Choose a Finrun job file.",
        "Ese archivo es demasiado grande para un proyecto. Elija un archivo de proyecto de Finrun.";
    result_line: "Result", "Resultado";
    unit_factor: "(units)", "(unidades)";
    done_with_errors: "This room is not complete yet.", "Esta habitación todavía no está completa.";
    removed_room: "A room that is gone", "Una habitación que ya no existe";
    removed_assembly: "An assembly that is gone", "Una construcción que ya no existe";
}
