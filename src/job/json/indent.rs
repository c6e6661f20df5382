//! Compact JSON laid out over lines.

/// Two spaces a level, as people lay it out; `text` is compact and sound.
pub fn indent(text: &str) -> String {
    let mut out = String::with_capacity(text.len() * 2);
    let mut depth = 0;
    let mut quoted = false;
    let mut chars = text.chars().peekable();
    while let Some(c) = chars.next() {
        if quoted {
            out.push(c);
            match c {
                '\\' => out.extend(chars.next()),
                '"' => quoted = false,
                _ => {}
            }
            continue;
        }
        match c {
            '{' | '[' => {
                out.push(c);
                if let Some(close) = chars.next_if(|next| matches!(next, '}' | ']')) {
                    out.push(close);
                } else {
                    depth += 1;
                    line(&mut out, depth);
                }
            }
            '}' | ']' => {
                depth -= 1;
                line(&mut out, depth);
                out.push(c);
            }
            ',' => {
                out.push(c);
                line(&mut out, depth);
            }
            ':' => out.push_str(": "),
            _ => {
                quoted = c == '"';
                out.push(c);
            }
        }
    }
    out
}

fn line(out: &mut String, depth: usize) {
    out.push('\n');
    (0..depth).for_each(|_| out.push_str("  "));
}
