//! From nodes to types: serde's side of reading.

use super::error::JsonError;
use super::inside::{Fields, Items, Variant};
use super::node::{Node, Reader, Seen, What};
use serde::de::{DeserializeOwned, Deserializer, Visitor};
use serde::forward_to_deserialize_any;

const FIELDS: &str = "an object with its fields in { }";
const LIST: &str = "a list in [ ]";

/// Reads a type from a whole text's nodes.
pub fn read<T: DeserializeOwned>(root: &Node<'_>) -> Result<T, JsonError> {
    T::deserialize(Reader { node: root }).map_err(|error| error.found_in(root))
}

impl<'n> Reader<'n> {
    #[cold]
    #[inline(never)]
    pub fn needs(self, what: &str) -> JsonError {
        JsonError::new(format!("{what} is needed here, not {}", self.node.named()))
    }

    #[inline(never)]
    fn flag(self) -> Result<bool, JsonError> {
        self.node.seen.set(Seen::Begun);
        match self.node.what {
            What::Flag(flag) => Ok(flag),
            _ => Err(self.needs("true or false")),
        }
    }

    #[inline(never)]
    fn whole(self, most: u64) -> Result<u64, JsonError> {
        self.node.seen.set(Seen::Begun);
        match self.node.what {
            What::Whole(whole) if whole <= most => Ok(whole),
            What::Whole(_) => Err(self.needs(&format!("a whole number up to {most}"))),
            _ => Err(self.needs("a whole number from 0 up")),
        }
    }

    #[inline(never)]
    fn signed(self, least: i64, most: i64) -> Result<i64, JsonError> {
        self.node.seen.set(Seen::Begun);
        let number = match self.node.what {
            What::Whole(whole) => i64::try_from(whole).ok(),
            What::Negative(negative) => Some(negative),
            _ => return Err(self.needs("a whole number")),
        };
        number
            .filter(|number| (least..=most).contains(number))
            .ok_or_else(|| self.needs(&format!("a whole number from {least} to {most}")))
    }

    #[inline(never)]
    fn real(self) -> Result<f64, JsonError> {
        self.node.seen.set(Seen::Begun);
        match self.node.what {
            What::Whole(whole) => Ok(whole as f64),
            What::Negative(negative) => Ok(negative as f64),
            What::Real(real) => Ok(real),
            _ => Err(self.needs("a number")),
        }
    }

    #[inline(never)]
    fn words(self) -> Result<&'n str, JsonError> {
        self.node.seen.set(Seen::Begun);
        self.node.words().ok_or_else(|| self.needs("a text in quotes"))
    }

    #[inline(never)]
    fn list(self) -> Result<Items<'n>, JsonError> {
        self.node.seen.set(Seen::Begun);
        match &self.node.what {
            What::List(items) => Ok(Items {
                list: self,
                rest: items,
            }),
            _ => Err(self.needs(LIST)),
        }
    }

    #[inline(never)]
    pub fn list_of(self, count: usize) -> Result<Items<'n>, JsonError> {
        let items = self.list()?;
        if items.rest.len() == count {
            return Ok(items);
        }
        Err(JsonError::new(format!(
            "a list of {count} is needed here, not of {}",
            items.rest.len()
        )))
    }

    #[inline(never)]
    pub fn fields(self) -> Result<Fields<'n>, JsonError> {
        self.node.seen.set(Seen::Begun);
        match &self.node.what {
            What::Fields(fields) => Ok(Fields {
                object: self,
                value: self.node,
                rest: fields,
            }),
            _ => Err(self.needs(FIELDS)),
        }
    }

    #[inline(never)]
    fn variant(self) -> Result<Variant<'n>, JsonError> {
        self.node.seen.set(Seen::Begun);
        match &self.node.what {
            What::Words(_) => Ok(Variant {
                name: self,
                content: None,
            }),
            What::Fields(fields) => match fields.as_slice() {
                [(name, content)] => Ok(Variant {
                    name: Reader { node: name },
                    content: Some(content),
                }),
                _ => Err(JsonError::new(format!(
                    "one kind with its value is needed here, not {} of them",
                    fields.len()
                ))),
            },
            _ => Err(self.needs("a kind")),
        }
    }
}

macro_rules! numbers {
    ($($method:ident $visit:ident $kind:ident $through:ident($($limit:expr),*);)*) => {
        $(fn $method<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, JsonError> {
            visitor.$visit(self.$through($($limit),*)? as $kind)
        })*
    };
}

impl<'de> Deserializer<'de> for Reader<'_> {
    type Error = JsonError;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, JsonError> {
        match &self.node.what {
            What::Null => visitor.visit_unit(),
            What::Flag(flag) => visitor.visit_bool(*flag),
            What::Whole(whole) => visitor.visit_u64(*whole),
            What::Negative(negative) => visitor.visit_i64(*negative),
            What::Real(real) => visitor.visit_f64(*real),
            What::Words(words) => visitor.visit_str(words),
            What::List(_) => visitor.visit_seq(self.list()?),
            What::Fields(_) => visitor.visit_map(self.fields()?),
        }
    }

    numbers! {
        deserialize_u8 visit_u8 u8 whole(u8::MAX.into());
        deserialize_u16 visit_u16 u16 whole(u16::MAX.into());
        deserialize_u32 visit_u32 u32 whole(u32::MAX.into());
        deserialize_u64 visit_u64 u64 whole(u64::MAX);
        deserialize_i8 visit_i8 i8 signed(i8::MIN.into(), i8::MAX.into());
        deserialize_i16 visit_i16 i16 signed(i16::MIN.into(), i16::MAX.into());
        deserialize_i32 visit_i32 i32 signed(i32::MIN.into(), i32::MAX.into());
        deserialize_i64 visit_i64 i64 signed(i64::MIN, i64::MAX);
        deserialize_f32 visit_f32 f32 real();
        deserialize_f64 visit_f64 f64 real();
    }

    fn deserialize_bool<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, JsonError> {
        visitor.visit_bool(self.flag()?)
    }

    fn deserialize_str<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, JsonError> {
        visitor.visit_str(self.words()?)
    }

    fn deserialize_string<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, JsonError> {
        visitor.visit_str(self.words()?)
    }

    fn deserialize_identifier<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, JsonError> {
        visitor.visit_str(self.words()?)
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, JsonError> {
        match self.node.what {
            What::Null => visitor.visit_none(),
            _ => visitor.visit_some(self),
        }
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        visitor: V,
    ) -> Result<V::Value, JsonError> {
        visitor.visit_newtype_struct(self)
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, JsonError> {
        visitor.visit_seq(self.list()?)
    }

    fn deserialize_tuple<V: Visitor<'de>>(self, count: usize, visitor: V) -> Result<V::Value, JsonError> {
        visitor.visit_seq(self.list_of(count)?)
    }

    fn deserialize_tuple_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        count: usize,
        visitor: V,
    ) -> Result<V::Value, JsonError> {
        visitor.visit_seq(self.list_of(count)?)
    }

    fn deserialize_map<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, JsonError> {
        visitor.visit_map(self.fields()?)
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, JsonError> {
        visitor.visit_map(self.fields()?)
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, JsonError> {
        visitor.visit_enum(self.variant()?)
    }

    fn deserialize_ignored_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, JsonError> {
        visitor.visit_unit()
    }

    forward_to_deserialize_any! { i128 u128 char bytes byte_buf unit unit_struct }
}
