//! Words of the card on its way: received, on paper, in a QR code.

texts! {
    card_short_hint: "The QR code holds what the first two days need. Send the link or the file too: it adds the rest.", "El código QR lleva lo necesario para los dos primeros días. Envíe también el enlace o el archivo: añade el resto.";
}
