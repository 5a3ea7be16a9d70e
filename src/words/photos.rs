//! Words of photos: taking, keeping, finding them again.

use crate::words::Language;
use crate::words::format::Writing;

/// Why a photo was not kept. Nothing was then noted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PhotoFault {
    /// The file is no picture that this browser reads, or cannot be read.
    NotAPicture,
    /// There is no space left.
    Full,
    /// This browser keeps no photos here.
    NotHere,
}

impl Language {
    /// Why a photo was not kept, and what to do.
    pub const fn photo_fault(self, fault: PhotoFault) -> &'static str {
        match fault {
            PhotoFault::NotAPicture => self.pick(
                "Not kept: this file is no picture that this browser can read. Take a photo, or choose a JPEG or PNG.",
                "No se guardó: este archivo no es una imagen que este navegador pueda leer. Haga una foto o elija un JPEG o PNG.",
            ),
            PhotoFault::Full => self.pick(
                "Photo NOT kept: this phone's storage is full. Your notes are not affected. Send the photo to the vet by message, or free some space and try again.",
                "Foto NO guardada: no queda espacio en este teléfono. Sus notas no se ven afectadas. Envíe la foto al veterinario por mensaje, o libere espacio e inténtelo de nuevo.",
            ),
            PhotoFault::NotHere => self.pick(
                "Photo NOT kept: this browser does not let the app store pictures. Your notes are not affected. Send the photo to the vet by message.",
                "Foto NO guardada: este navegador no deja que la app guarde imágenes. Sus notas no se ven afectadas. Envíe la foto al veterinario por mensaje.",
            ),
        }
    }
}

impl Writing {
    /// How many photos there are and what space they take.
    pub fn photos_space(self, count: usize, bytes: u64) -> String {
        let megabytes = bytes.div_ceil(100_000);
        let tenths = i32::try_from(megabytes).unwrap_or(i32::MAX);
        let size = format!("{}\u{a0}MB", self.tenths(tenths));
        match (self.language, count) {
            (Language::English, 1) => format!("1 photo, {size} of this browser's space."),
            (Language::English, _) => format!("{count} photos, {size} of this browser's space."),
            (Language::Spanish, 1) => format!("1 foto, {size} del espacio de este navegador."),
            (Language::Spanish, _) => {
                format!("{count} fotos, {size} del espacio de este navegador.")
            }
        }
    }

    /// How many photos were kept of those chosen together.
    pub fn photos_kept(self, kept: usize, all: usize) -> String {
        match self.language {
            Language::English => format!("Photos kept: {kept} of {all}."),
            Language::Spanish => format!("Fotos guardadas: {kept} de {all}."),
        }
    }

    /// What a backup with photos holds.
    pub fn photos_in_file(self, count: usize) -> String {
        match self.language {
            Language::English => format!("Ready: all notes and {count} photos in one file."),
            Language::Spanish => format!("Listo: todas las notas y {count} fotos en un archivo."),
        }
    }

    /// How many photos came in with a file.
    pub fn photos_taken_in(self, kept: usize, left: usize) -> String {
        let rest = match (self.language, left) {
            (_, 0) => String::new(),
            (Language::English, _) => {
                format!(" {left} were damaged or belong to no note here, and were left out.")
            }
            (Language::Spanish, _) => {
                format!(" {left} estaban dañadas o no son de ninguna nota de aquí, y se dejaron.")
            }
        };
        match self.language {
            Language::English => format!("Photos imported: {kept}.{rest}"),
            Language::Spanish => format!("Fotos importadas: {kept}.{rest}"),
        }
    }
}

texts! {
    photos_title: "Photos", "Fotos";
    photos_of: "What does the photo show?", "¿Qué muestra la foto?";
    photo_droppings: "Droppings", "Heces";
    photo_crop: "Crop", "Buche";
    photo_skin: "Skin or feathers", "Piel o plumas";
    photo_take: "Take a photo", "Hacer una foto";
    photo_choose: "Or choose photos", "O elegir fotos";
    photo_keeping: "Keeping the photo…", "Guardando la foto…";
    photos_honest: "Each photo is made small (at most 200 kB), and what the camera wrote into it, such as the place, is taken out. It is kept in this browser only, in one copy: the browser can clear it. Links never hold a photo; a backup with photos does.", "Cada foto se reduce (200 kB como máximo), y lo que la cámara escribió en ella, como el lugar, se quita. Se guarda solo en este navegador, en una sola copia: el navegador puede borrarla. Los enlaces nunca llevan fotos; una copia de seguridad con fotos, sí.";
    photo_not_here: "The picture is not on this phone. It is on the phone that took it, and in a backup with photos.", "La imagen no está en este teléfono. Está en el que hizo la foto y en una copia de seguridad con fotos.";
    photos_backup: "Prepare a backup with photos", "Preparar una copia con fotos";
    photos_backup_working: "Collecting the photos…", "Reuniendo las fotos…";
    photos_backup_save: "Save the backup with photos", "Guardar la copia con fotos";
    vet_link: "Reason for the visit, photos", "Motivo de la consulta, fotos";
    vet_title: "For the vet", "Para el veterinario";
    vet_reason_label: "Why should the vet see it?", "¿Por qué debe verlo el veterinario?";
    vet_reason_hint: "What you saw, since when, in your own words. It stands first on the page.", "Qué vio y desde cuándo, con sus palabras. Va primero en la página.";
    vet_reason_keep: "Keep the reason", "Guardar el motivo";
    vet_page_make: "Page for the vet", "Página para el veterinario";
    vet_page_hint: "One A4 page: print it, send it, or read it aloud.", "Una página A4: imprímala, envíela o léala en voz alta.";
}
