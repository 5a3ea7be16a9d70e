//! A photo as the journal tells of it: of what it is, its hash and its size. The picture itself lies elsewhere.

/// Most bytes of a photo, 200 kB. Ours: a dropping can be judged, and hundreds fit into a browser.
pub const MOST_PHOTO_BYTES: u32 = 200_000;

/// What a photo shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PhotoOf {
    /// Droppings.
    Droppings,
    /// The crop.
    Crop,
    /// Skin or feathers.
    Skin,
}

impl PhotoOf {
    /// Every one.
    pub const ALL: [Self; 3] = [Self::Droppings, Self::Crop, Self::Skin];
}

/// The SHA-256 of a photo's bytes. Source: FIPS 180-4.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PhotoHash(pub [u8; 32]);

impl PhotoHash {
    /// As 64 lower-case hexadecimal digits, as other programs write it.
    ///
    /// # Examples
    /// ```
    /// use perchlight::domain::journal::photo::PhotoHash;
    /// let text = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    /// let hash = PhotoHash::from_hex(text).unwrap();
    /// assert_eq!(hash.to_hex(), text);
    /// assert_eq!(PhotoHash::from_hex(&text.to_uppercase()), None);
    /// assert_eq!(PhotoHash::from_hex(&text[1..]), None);
    /// ```
    pub fn to_hex(self) -> String {
        let digit = |half: u8| char::from_digit(half.into(), 16);
        let digits = |byte: &u8| [digit(byte >> 4), digit(byte & 15)];
        self.0.iter().flat_map(digits).flatten().collect()
    }

    /// The hash of 64 lower-case hexadecimal digits; `None` for any other text.
    pub fn from_hex(text: &str) -> Option<Self> {
        let (pairs, rest) = text.as_bytes().as_chunks::<2>();
        if pairs.len() != 32 || !rest.is_empty() {
            return None;
        }
        let half = |digit: u8| match digit {
            b'0'..=b'9' => Some(digit - b'0'),
            b'a'..=b'f' => Some(digit - b'a' + 10),
            _ => None,
        };
        let mut hash = [0; 32];
        for (byte, [high, low]) in hash.iter_mut().zip(pairs) {
            *byte = half(*high)? << 4 | half(*low)?;
        }
        Some(Self(hash))
    }
}

/// A photo, but for the picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Photo {
    /// What it shows.
    pub of: PhotoOf,
    /// Under which its picture is kept.
    pub hash: PhotoHash,
    /// Bytes of the picture, 1 to [`MOST_PHOTO_BYTES`].
    pub bytes: u32,
}
