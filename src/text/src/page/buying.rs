//! Words of prices and of the materials list.

use crate::language::sentences;

sentences! { pub(super) PRICES;
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
}

sentences! { pub(super) MATERIALS;
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
}
