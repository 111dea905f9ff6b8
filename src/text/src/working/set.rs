//! How formulas and symbols are set in print: lowered, raised, in Greek.

/// A piece of a formula for the page: plain, lowered or raised.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Piece {
    Plain(String),
    Lowered(String),
    Raised(Vec<Piece>),
}

/// Sets a formula's text: `*` as a dot, `_x` lowered, `^ x` raised, Greek by name; `write` turns a
/// symbol into what is shown for it (itself, or its number).
pub fn set_formula(text: &str, write: &dyn Fn(&str) -> Vec<Piece>) -> Vec<Piece> {
    let mut out = Vec::new();
    let mut rest = text;
    while let Some(first) = rest.chars().next() {
        let (piece, after) = take_token(rest, first);
        rest = after;
        match first {
            '^' => {
                let (raised, after) = take_exponent(rest.trim_start());
                rest = after;
                // A space before an operator would hang in the air behind a raised exponent.
                while matches!(out.last(), Some(Piece::Plain(space)) if space == " ") {
                    out.pop();
                }
                out.push(Piece::Raised(set_formula(raised, write)));
            }
            '*' => out.push(Piece::Plain("·".to_string())),
            '-' => out.push(Piece::Plain("−".to_string())),
            _ if piece == "pi" => out.push(Piece::Plain("π".to_string())),
            c if c.is_ascii_alphabetic() && !matches!(piece, "exp" | "ln" | "log10") => {
                out.extend(write(piece));
            }
            _ => out.push(Piece::Plain(piece.to_string())),
        }
    }
    out
}

/// A symbol as it is printed: `T_in` with its subscript, `rho` as a Greek letter.
pub fn set_symbol(symbol: &str) -> Vec<Piece> {
    let (name, low) = match symbol.split_once('_') {
        Some((name, low)) => (name, Some(low)),
        None => (symbol, None),
    };
    let name = match name {
        "rho" => "ρ",
        "mu" => "μ",
        "lambda" => "λ",
        "delta" => "δ",
        "psi" => "ψ",
        "eta" => "η",
        "alpha" => "α",
        "dT" => "ΔT",
        "dp" => "Δp",
        "e" => "ε",
        other => other,
    };
    let mut pieces = vec![Piece::Plain(name.to_string())];
    pieces.extend(low.map(|low| Piece::Lowered(low.to_string())));
    pieces
}

fn take_token(text: &str, first: char) -> (&str, &str) {
    let belongs = |c: char| match first {
        f if f.is_ascii_alphabetic() => c.is_ascii_alphanumeric() || c == '_',
        f if f.is_ascii_digit() => c.is_ascii_digit() || c == '.',
        _ => false,
    };
    let end = text
        .char_indices()
        .skip(1)
        .find(|&(_, c)| !belongs(c))
        .map_or(text.len(), |(index, _)| index);
    text.split_at(end)
}

/// A bracketed exponent without its brackets, or a single number or symbol.
fn take_exponent(text: &str) -> (&str, &str) {
    if let Some(inner) = text.strip_prefix('(') {
        let mut depth = 1;
        for (index, c) in inner.char_indices() {
            match c {
                '(' => depth += 1,
                ')' => depth -= 1,
                _ => {}
            }
            if depth == 0 {
                return (&inner[..index], &inner[index + 1..]);
            }
        }
    }
    match text.chars().next() {
        Some(first) => take_token(text, first),
        None => (text, ""),
    }
}
