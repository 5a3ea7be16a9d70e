//! Words for what leaves the phone and comes back: refusals, previews, file names, shared labels.

use crate::domain::time::moment::Lived;
use crate::store::import_error::ImportError;
use crate::words::Language;
use crate::words::format::Writing;

impl Language {
    /// Why a text was not taken in, and what to do.
    pub const fn import_error(self, error: &ImportError) -> &'static str {
        match error {
            ImportError::NotOurs => self.pick(
                "There is no Perchlight card, report or backup in this. Copy the whole message, or choose the file you were sent.",
                "Aquí no hay ninguna tarjeta, informe ni copia de Perchlight. Copie el mensaje entero o elija el archivo que le enviaron.",
            ),
            ImportError::Newer { .. } => self.pick(
                "It was made by a newer version of Perchlight. Update first, then open it again.",
                "Lo hizo una versión más nueva de Perchlight. Actualice primero y ábralo de nuevo.",
            ),
            ImportError::Damaged => self.pick(
                "Something in it was altered on its way. Nothing was taken in. Ask for it again, best as a file.",
                "Algo cambió por el camino. No se tomó nada. Pídalo de nuevo, mejor como archivo.",
            ),
            ImportError::Truncated => self.pick(
                "Its end is missing. Nothing was taken in. Copy all of it, up to the last character, or ask for the file.",
                "Le falta el final. No se tomó nada. Cópielo entero, hasta el último carácter, o pida el archivo.",
            ),
            ImportError::TooLarge => self.pick(
                "It is larger than any card, report or backup. Nothing was taken in.",
                "Es más grande que cualquier tarjeta, informe o copia. No se tomó nada.",
            ),
            ImportError::WrongKind => self.pick(
                "It is from Perchlight, but of a kind that cannot be taken in here.",
                "Es de Perchlight, pero de una clase que aquí no se puede tomar.",
            ),
        }
    }
}

impl Language {
    /// A file was given to the browser to be saved. Whether it was is for the person to see.
    pub fn hand_saved(self, name: &str) -> String {
        match self {
            Self::English => format!("Saved as {name}: look in the downloads of this browser."),
            Self::Spanish => {
                format!("Guardado como {name}: búsquelo en las descargas de este navegador.")
            }
        }
    }
}

impl Writing {
    /// What goes before a link or file with records in a message.
    pub fn message_with_records(self, name: &str) -> String {
        let say = self.language;
        let records = labelled(say.exchange_records(), name);
        format!("{records}. {}", say.exchange_anyone())
    }

    /// What a backup that was opened again holds, and whether that is everything.
    pub fn backup_checked(self, count: usize, lacks: usize, sum: u32, is_same: bool) -> String {
        let sum = self.checksum(sum);
        let held = match (self.language, count) {
            (Language::English, 1) => "It opens and holds 1 entry".to_owned(),
            (Language::English, _) => format!("It opens and holds {count} entries"),
            (Language::Spanish, 1) => "Se abre y contiene 1 anotación".to_owned(),
            (Language::Spanish, _) => format!("Se abre y contiene {count} anotaciones"),
        };
        match (self.language, lacks, is_same) {
            (Language::English, 0, true) => {
                format!("{held}, all that are on this phone. {sum} The same as when it was saved.")
            }
            (Language::English, 0, false) => format!("{held}, all that are on this phone. {sum}"),
            (Language::English, 1, _) => {
                format!("{held}, but 1 entry of this phone is not in it. Save a new backup. {sum}")
            }
            (Language::English, _, _) => format!(
                "{held}, but {lacks} entries of this phone are not in it. Save a new backup. {sum}"
            ),
            (Language::Spanish, 0, true) => {
                format!("{held}: todo lo de este teléfono. {sum} La misma que al guardarla.")
            }
            (Language::Spanish, 0, false) => format!("{held}: todo lo de este teléfono. {sum}"),
            (Language::Spanish, 1, _) => format!(
                "{held}, pero le falta 1 anotación de este teléfono. Guarde una copia nueva. {sum}"
            ),
            (Language::Spanish, _, _) => format!(
                "{held}, pero le faltan {lacks} anotaciones de este teléfono. Guarde una copia nueva. {sum}"
            ),
        }
    }

    /// A check sum in two groups, to be compared by eye.
    pub fn checksum(self, sum: u32) -> String {
        let (high, low) = (sum >> 16, sum & 0xffff);
        match self.language {
            Language::English => format!("Checksum {high:04X}\u{a0}{low:04X}."),
            Language::Spanish => format!("Suma de control {high:04X}\u{a0}{low:04X}."),
        }
    }

    /// The act of copying only what another phone cannot have yet.
    pub fn only_new_since(self, sent: Lived) -> String {
        let sent = self.lived(sent);
        match self.language {
            Language::English => format!("Copy only what is new since {sent}"),
            Language::Spanish => format!("Copiar solo lo nuevo desde el {sent}"),
        }
    }

    /// How long nothing was heard of a placed chick.
    pub fn quiet_days(self, days: Option<i64>) -> String {
        match (self.language, days) {
            (Language::English, None) => "no report yet".to_owned(),
            (Language::English, Some(0)) => "heard of within a day".to_owned(),
            (Language::English, Some(1)) => "nothing for 1 day".to_owned(),
            (Language::English, Some(days)) => format!("nothing for {days} days"),
            (Language::Spanish, None) => "aún sin informes".to_owned(),
            (Language::Spanish, Some(0)) => "con noticias del último día".to_owned(),
            (Language::Spanish, Some(1)) => "sin noticias desde hace 1 día".to_owned(),
            (Language::Spanish, Some(days)) => format!("sin noticias desde hace {days} días"),
        }
    }

    /// How many feeds a placed chick is still given.
    pub fn feeds_left(self, count: usize) -> String {
        match (self.language, count) {
            (Language::English, 1) => "1 feed a day".to_owned(),
            (Language::English, _) => format!("{count} feeds a day"),
            (Language::Spanish, 1) => "1 toma al día".to_owned(),
            (Language::Spanish, _) => format!("{count} tomas al día"),
        }
    }
}

/// A label and what it stands for; the label alone when there is nothing.
pub(crate) fn labelled(label: &str, text: &str) -> String {
    if text.is_empty() {
        label.to_owned()
    } else {
        format!("{label}: {text}")
    }
}

texts! {
    hand_shared: "Given to the app you chose.", "Entregado a la app que eligió.";
    hand_cancelled: "Sharing was cancelled: nothing was sent or saved.", "Se canceló: no se envió ni se guardó nada.";
    hand_save_instead: "Save it as a file instead", "Guardarlo como archivo";
    hand_no_file: "This browser gives no file. Copy the text below, or use another browser.", "Este navegador no da el archivo. Copie el texto de abajo o use otro navegador.";
    hand_text: "The file as text", "El archivo como texto";
    picture_make: "Weight as a picture", "El peso como imagen";
    picture_send: "Send or save the picture", "Enviar o guardar la imagen";
    picture_hold: "Or press and hold the picture to save it.", "O mantenga pulsada la imagen para guardarla.";
    picture_refused: "This browser draws no picture. Send the report instead: it holds the chart.", "Este navegador no dibuja la imagen. Envíe el informe: contiene el gráfico.";
    backup_check: "Open the file again to check it", "Abrir el archivo otra vez para comprobarlo";
    backup_check_hint: "Only a file that was opened again counts as a backup.", "Solo cuenta como copia un archivo que se abrió de nuevo.";
    backup_is_card: "That is a card, not a backup.", "Eso es una tarjeta, no una copia.";
    exchange_copy_link: "Copy the link again", "Copiar el enlace otra vez";
    exchange_card: "Handover card", "Tarjeta de entrega";
    exchange_records: "Records", "Registros";
    exchange_anyone: "Anyone with it can read what it says.", "Quien lo tenga puede leer lo que dice.";
    take_another: "Paste another text or choose a file", "Pegar otro texto o elegir un archivo";
    exchange_take_card: "Take this card", "Tomar esta tarjeta";
    exchange_take_plan: "Take the changed plan", "Tomar el plan cambiado";
    exchange_no_change: "This plan is the same as the one you have.", "Este plan es igual al que ya tiene.";
    exchange_paste_hint: "On an iPhone a scanned link opens in Safari, which keeps its own records. Copy the link there, open Perchlight from the home screen and paste it here.", "En un iPhone, un enlace escaneado se abre en Safari, que guarda sus propios registros. Copie allí el enlace, abra Perchlight desde la pantalla de inicio y péguelo aquí.";
    exchange_too_long: "Too much for a link: send the file.", "Demasiado para un enlace: envíe el archivo.";
    exchange_alert_on: "Open one event after the import and check that its alert is on: some calendars leave it out.", "Abra un evento tras importar y compruebe que su aviso está activo: algunos calendarios lo omiten.";
    exchange_old_first: "After each change of the plan open a new file: it replaces the events of the old one. If feeds then stand there twice, delete the old events.", "Tras cada cambio del plan abra un archivo nuevo: sustituye los eventos del anterior. Si entonces las tomas aparecen dos veces, borre los antiguos.";
    exchange_placed: "Placed chicks", "Pollos entregados";
}
