//! Closed lists whose members have one spelling everywhere: column, form, API, and (behind a prefix) language key.

/// A member of a closed list, named by one lower-case code.
pub trait Coded: Copy + Eq + Sized + 'static {
    /// Every member, in the order in which a person expects to choose.
    const ALL: &'static [Self];
    /// What the list is called in the language files: the key of a member is `{LIST}-{code}`.
    const LIST: &'static str;

    /// The code of this member.
    fn code(self) -> &'static str;

    /// The member with this code.
    fn from_code(code: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|one| one.code() == code)
    }
}

/// A text that is no member of the list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NotInList {
    /// The list's name.
    pub list: &'static str,
    /// What was found.
    pub got: String,
}

impl std::fmt::Display for NotInList {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{:?} is no {}", self.got, self.list)
    }
}

impl std::error::Error for NotInList {}

/// Declares a closed list: the enum, its codes, text form, serde and column type in one place.
macro_rules! coded {
    ($(#[$doc:meta])* $list:literal $name:ident { $($(#[$mdoc:meta])* $member:ident = $code:literal,)* }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name { $($(#[$mdoc])* $member,)* }

        impl $crate::model::Coded for $name {
            const ALL: &'static [Self] = &[$(Self::$member,)*];
            const LIST: &'static str = $list;
            fn code(self) -> &'static str {
                match self { $(Self::$member => $code,)* }
            }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str($crate::model::Coded::code(*self))
            }
        }

        impl std::str::FromStr for $name {
            type Err = $crate::model::NotInList;
            fn from_str(text: &str) -> Result<Self, Self::Err> {
                <Self as $crate::model::Coded>::from_code(text)
                    .ok_or_else(|| $crate::model::NotInList { list: $list, got: text.to_owned() })
            }
        }

        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                to.serialize_str($crate::model::Coded::code(*self))
            }
        }

        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                let text = <String as serde::Deserialize>::deserialize(from)?;
                text.parse().map_err(serde::de::Error::custom)
            }
        }

        impl<DB: sqlx::Database> sqlx::Type<DB> for $name where String: sqlx::Type<DB> {
            fn type_info() -> DB::TypeInfo {
                <String as sqlx::Type<DB>>::type_info()
            }
            fn compatible(ty: &DB::TypeInfo) -> bool {
                <String as sqlx::Type<DB>>::compatible(ty)
            }
        }

        impl<'q, DB: sqlx::Database> sqlx::Encode<'q, DB> for $name where String: sqlx::Encode<'q, DB> {
            fn encode_by_ref(
                &self,
                buf: &mut <DB as sqlx::Database>::ArgumentBuffer,
            ) -> Result<sqlx::encode::IsNull, sqlx::error::BoxDynError> {
                <String as sqlx::Encode<'q, DB>>::encode_by_ref(&self.to_string(), buf)
            }
        }

        impl<'r, DB: sqlx::Database> sqlx::Decode<'r, DB> for $name where String: sqlx::Decode<'r, DB> {
            fn decode(value: <DB as sqlx::Database>::ValueRef<'r>) -> Result<Self, sqlx::error::BoxDynError> {
                Ok(<String as sqlx::Decode<'r, DB>>::decode(value)?.parse()?)
            }
        }
    };
}
pub(crate) use coded;
