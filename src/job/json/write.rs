//! From types to text: serde's side of writing.

use super::error::JsonError;
use serde::ser::{
    Serialize, SerializeMap, SerializeSeq, SerializeStruct, SerializeStructVariant, SerializeTuple,
    SerializeTupleStruct, SerializeTupleVariant, Serializer,
};
use std::fmt::Write;

type Written = Result<(), JsonError>;

/// The text so far, to which one value is added.
pub struct Writer<'o>(pub &'o mut String);

impl<'o> Writer<'o> {
    fn plain(self, text: &str) -> Written {
        self.0.push_str(text);
        Ok(())
    }

    #[inline(never)]
    fn whole(self, number: u64) -> Written {
        write!(self.0, "{number}").ok();
        Ok(())
    }

    #[inline(never)]
    fn signed(self, number: i64) -> Written {
        write!(self.0, "{number}").ok();
        Ok(())
    }

    /// std's shortest form that reads back to the last bit: JSON's own, where it is a number.
    #[inline(never)]
    fn real(self, number: f64) -> Written {
        if !number.is_finite() {
            return self.plain("null");
        }
        write!(self.0, "{number:?}").ok();
        Ok(())
    }

    #[inline(never)]
    fn words(self, text: &str) -> Written {
        self.0.push('"');
        for c in text.chars() {
            let letter = match c {
                '"' | '\\' => c,
                '\u{8}' => 'b',
                '\t' => 't',
                '\n' => 'n',
                '\u{c}' => 'f',
                '\r' => 'r',
                ..' ' => {
                    write!(self.0, "\\u{:04x}", u32::from(c)).ok();
                    continue;
                }
                _ => {
                    self.0.push(c);
                    continue;
                }
            };
            self.0.push('\\');
            self.0.push(letter);
        }
        self.plain("\"")
    }

    #[inline(never)]
    fn begin(self, open: &str, close: &'static str) -> Result<Group<'o>, JsonError> {
        self.0.push_str(open);
        Ok(Group { text: self.0, close })
    }

    /// The one key of a kind that holds something.
    #[inline(never)]
    fn kind(&mut self, name: &str) {
        self.0.push('{');
        Writer(self.0).words(name).ok();
        self.0.push(':');
    }
}

/// A list or object that is not closed yet.
pub struct Group<'o> {
    text: &'o mut String,
    close: &'static str,
}

impl Group<'_> {
    /// Before an item or key: a comma, where one stands before it.
    #[inline(never)]
    fn next(&mut self) -> Writer<'_> {
        // Words end in a quote: a bracket at the end is the group's own.
        if !self.text.ends_with(['{', '[']) {
            self.text.push(',');
        }
        Writer(self.text)
    }

    #[inline(never)]
    fn field(&mut self, name: &str) -> Writer<'_> {
        self.next().words(name).ok();
        self.text.push(':');
        Writer(self.text)
    }

    #[inline(never)]
    fn close(self) -> Written {
        Writer(self.text).plain(self.close)
    }
}

macro_rules! numbers {
    ($($method:ident $kind:ident $through:ident;)*) => {
        $(fn $method(self, number: $kind) -> Written {
            self.$through(number.into())
        })*
    };
}

impl<'o> Serializer for Writer<'o> {
    type Ok = ();
    type Error = JsonError;
    type SerializeSeq = Group<'o>;
    type SerializeTuple = Group<'o>;
    type SerializeTupleStruct = Group<'o>;
    type SerializeTupleVariant = Group<'o>;
    type SerializeMap = Group<'o>;
    type SerializeStruct = Group<'o>;
    type SerializeStructVariant = Group<'o>;

    fn serialize_bool(self, flag: bool) -> Written {
        self.plain(if flag { "true" } else { "false" })
    }

    numbers! {
        serialize_u8 u8 whole;
        serialize_u16 u16 whole;
        serialize_u32 u32 whole;
        serialize_u64 u64 whole;
        serialize_i8 i8 signed;
        serialize_i16 i16 signed;
        serialize_i32 i32 signed;
        serialize_i64 i64 signed;
        serialize_f32 f32 real;
        serialize_f64 f64 real;
    }

    fn serialize_char(self, c: char) -> Written {
        self.words(c.encode_utf8(&mut [0; 4]))
    }

    fn serialize_str(self, text: &str) -> Written {
        self.words(text)
    }

    fn serialize_bytes(self, _: &[u8]) -> Written {
        Err(JsonError::new("bytes have no form in JSON".to_owned()))
    }

    fn serialize_none(self) -> Written {
        self.plain("null")
    }

    fn serialize_some<T: Serialize + ?Sized>(self, value: &T) -> Written {
        value.serialize(self)
    }

    fn serialize_unit(self) -> Written {
        self.plain("null")
    }

    fn serialize_unit_struct(self, _: &'static str) -> Written {
        self.plain("null")
    }

    fn serialize_unit_variant(self, _: &'static str, _: u32, name: &'static str) -> Written {
        self.words(name)
    }

    fn serialize_newtype_struct<T: Serialize + ?Sized>(self, _: &'static str, value: &T) -> Written {
        value.serialize(self)
    }

    fn serialize_newtype_variant<T: Serialize + ?Sized>(
        mut self,
        _: &'static str,
        _: u32,
        name: &'static str,
        value: &T,
    ) -> Written {
        self.kind(name);
        value.serialize(Writer(self.0))?;
        self.plain("}")
    }

    fn serialize_seq(self, _: Option<usize>) -> Result<Group<'o>, JsonError> {
        self.begin("[", "]")
    }

    fn serialize_tuple(self, _: usize) -> Result<Group<'o>, JsonError> {
        self.begin("[", "]")
    }

    fn serialize_tuple_struct(self, _: &'static str, _: usize) -> Result<Group<'o>, JsonError> {
        self.begin("[", "]")
    }

    fn serialize_tuple_variant(
        mut self,
        _: &'static str,
        _: u32,
        name: &'static str,
        _: usize,
    ) -> Result<Group<'o>, JsonError> {
        self.kind(name);
        self.begin("[", "]}")
    }

    fn serialize_map(self, _: Option<usize>) -> Result<Group<'o>, JsonError> {
        self.begin("{", "}")
    }

    fn serialize_struct(self, _: &'static str, _: usize) -> Result<Group<'o>, JsonError> {
        self.begin("{", "}")
    }

    fn serialize_struct_variant(
        mut self,
        _: &'static str,
        _: u32,
        name: &'static str,
        _: usize,
    ) -> Result<Group<'o>, JsonError> {
        self.kind(name);
        self.begin("{", "}}")
    }
}

impl SerializeMap for Group<'_> {
    type Ok = ();
    type Error = JsonError;

    fn serialize_key<T: Serialize + ?Sized>(&mut self, key: &T) -> Written {
        let mut name = String::new();
        key.serialize(Writer(&mut name))?;
        let quoted = name.starts_with('"');
        if !quoted && !name.starts_with(|c: char| c == '-' || c.is_ascii_digit()) {
            return Err(JsonError::new("key must be a string".to_owned()));
        }
        let quote = if quoted { "" } else { "\"" };
        write!(self.next().0, "{quote}{name}{quote}:").ok();
        Ok(())
    }

    fn serialize_value<T: Serialize + ?Sized>(&mut self, value: &T) -> Written {
        value.serialize(Writer(self.text))
    }

    fn end(self) -> Written {
        self.close()
    }
}

macro_rules! items {
    ($($group:ident $method:ident)*) => {
        $(impl $group for Group<'_> {
            type Ok = ();
            type Error = JsonError;

            fn $method<T: Serialize + ?Sized>(&mut self, value: &T) -> Written {
                value.serialize(self.next())
            }

            fn end(self) -> Written {
                self.close()
            }
        })*
    };
}

items! {
    SerializeSeq serialize_element
    SerializeTuple serialize_element
    SerializeTupleStruct serialize_field
    SerializeTupleVariant serialize_field
}

macro_rules! fields {
    ($($group:ident)*) => {
        $(impl $group for Group<'_> {
            type Ok = ();
            type Error = JsonError;

            fn serialize_field<T: Serialize + ?Sized>(&mut self, name: &'static str, value: &T) -> Written {
                value.serialize(self.field(name))
            }

            fn end(self) -> Written {
                self.close()
            }
        })*
    };
}

fields! { SerializeStruct SerializeStructVariant }
