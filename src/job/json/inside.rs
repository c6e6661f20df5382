//! What is inside a node: items, fields, the content of a kind; read one after another.

use super::error::JsonError;
use super::node::{Node, Reader, Seen, What};
use serde::de::{DeserializeSeed, EnumAccess, MapAccess, SeqAccess, VariantAccess, Visitor};

/// The items of a list still to be read.
pub struct Items<'n> {
    pub list: Reader<'n>,
    pub rest: &'n [Node<'n>],
}

impl<'n> Items<'n> {
    #[inline(never)]
    fn step(&mut self) -> Option<Reader<'n>> {
        let Some((first, rest)) = self.rest.split_first() else {
            self.list.node.seen.set(Seen::Ended);
            return None;
        };
        self.rest = rest;
        Some(Reader { node: first })
    }
}

impl<'de> SeqAccess<'de> for Items<'_> {
    type Error = JsonError;

    fn next_element_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, JsonError> {
        match self.step() {
            Some(item) => seed.deserialize(item).map(Some),
            None => Ok(None),
        }
    }

    fn size_hint(&self) -> Option<usize> {
        Some(self.rest.len())
    }
}

/// The fields of an object still to be read, and the value of the one named last.
pub struct Fields<'n> {
    pub object: Reader<'n>,
    pub value: &'n Node<'n>,
    pub rest: &'n [(Node<'n>, Node<'n>)],
}

impl<'n> Fields<'n> {
    /// The next name. At the end the object itself is what was looked at last: a field it lacks is its fault.
    #[inline(never)]
    fn step(&mut self) -> Option<Reader<'n>> {
        let Some(((name, value), rest)) = self.rest.split_first() else {
            self.object.node.seen.set(Seen::Ended);
            return None;
        };
        self.rest = rest;
        self.value = value;
        Some(Reader { node: name })
    }
}

impl<'de> MapAccess<'de> for Fields<'_> {
    type Error = JsonError;

    fn next_key_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, JsonError> {
        match self.step() {
            Some(name) => seed.deserialize(name).map(Some),
            None => Ok(None),
        }
    }

    fn next_value_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<S::Value, JsonError> {
        seed.deserialize(Reader { node: self.value })
    }
}

/// One kind of several, with what it holds.
pub struct Variant<'n> {
    pub name: Reader<'n>,
    pub content: Option<&'n Node<'n>>,
}

impl<'n> Variant<'n> {
    #[inline(never)]
    fn content(self) -> Result<Reader<'n>, JsonError> {
        let bare = || {
            let name = self.name.node.words().unwrap_or_default();
            JsonError::new(format!("“{name}” must have a value: {{\"{name}\": …}}"))
        };
        self.content.map(|node| Reader { node }).ok_or_else(bare)
    }
}

impl<'de, 'n> EnumAccess<'de> for Variant<'n> {
    type Error = JsonError;
    type Variant = Self;

    fn variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<(S::Value, Self), JsonError> {
        Ok((seed.deserialize(self.name)?, self))
    }
}

impl<'de> VariantAccess<'de> for Variant<'_> {
    type Error = JsonError;

    #[inline(never)]
    fn unit_variant(self) -> Result<(), JsonError> {
        match self.content {
            None => Ok(()),
            Some(node) if matches!(node.what, What::Null) => Ok(()),
            Some(node) => {
                node.seen.set(Seen::Begun);
                Err(Reader { node }.needs("nothing, or null,"))
            }
        }
    }

    fn newtype_variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<S::Value, JsonError> {
        seed.deserialize(self.content()?)
    }

    fn tuple_variant<V: Visitor<'de>>(self, count: usize, visitor: V) -> Result<V::Value, JsonError> {
        visitor.visit_seq(self.content()?.list_of(count)?)
    }

    fn struct_variant<V: Visitor<'de>>(
        self,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, JsonError> {
        visitor.visit_map(self.content()?.fields()?)
    }
}
