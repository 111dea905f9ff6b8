//! Words of arrangements side by side, and of the system beside common practice.

use crate::language::sentences;

sentences! { pub(super) COMPARE;
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
}
