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
                "Copy the whole message, or choose the file you were sent: there is no Perchlight card, report or backup in this.",
                "Copie el mensaje entero o elija el archivo que le enviaron: aquí no hay ninguna ficha, informe ni copia de Perchlight.",
            ),
            ImportError::Newer { .. } => self.pick(
                "Update Perchlight first, then open it again: it was made by a newer version.",
                "Actualice primero Perchlight y ábralo de nuevo: se hizo con una versión más nueva.",
            ),
            ImportError::Damaged => self.pick(
                "Ask for it again, best as a file: something in it was changed on the way. Nothing was imported.",
                "Pídalo de nuevo, mejor como archivo: algo cambió por el camino. No se importó nada.",
            ),
            ImportError::Truncated => self.pick(
                "Copy all of it, up to the last character, or ask for the file: its end is missing. Nothing was imported.",
                "Cópielo entero, hasta el último carácter, o pida el archivo: le falta el final. No se importó nada.",
            ),
            ImportError::TooLarge => self.pick(
                "It is larger than any card, report or backup. Nothing was imported.",
                "Es más grande que cualquier ficha, informe o copia. No se importó nada.",
            ),
            ImportError::WrongKind => self.pick(
                "It is from Perchlight, but it cannot be imported here.",
                "Es de Perchlight, pero aquí no se puede importar.",
            ),
        }
    }
}

impl Language {
    /// A file was given to the browser to be saved. Whether it was is for the person to see.
    pub fn hand_saved(self, name: &str) -> String {
        match self {
            Self::English => format!("Saved as {name}. Look in this browser's downloads."),
            Self::Spanish => {
                format!("Guardado como {name}. Búsquelo en las descargas de este navegador.")
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
                format!("{held}: everything on this phone. {sum} The same as when it was saved.")
            }
            (Language::English, 0, false) => format!("{held}: everything on this phone. {sum}"),
            (Language::English, 1, _) => {
                format!("Save a new backup. {held}, but 1 entry of this phone is missing. {sum}")
            }
            (Language::English, _, _) => format!(
                "Save a new backup. {held}, but {lacks} entries of this phone are missing. {sum}"
            ),
            (Language::Spanish, 0, true) => {
                format!("{held}: todo lo que hay en este teléfono. {sum} Igual que al guardarla.")
            }
            (Language::Spanish, 0, false) => {
                format!("{held}: todo lo que hay en este teléfono. {sum}")
            }
            (Language::Spanish, 1, _) => format!(
                "Guarde una copia nueva. {held}, pero le falta 1 anotación de este teléfono. {sum}"
            ),
            (Language::Spanish, _, _) => format!(
                "Guarde una copia nueva. {held}, pero le faltan {lacks} anotaciones de este teléfono. {sum}"
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
            (Language::English, Some(0)) => "a report within the last day".to_owned(),
            (Language::English, Some(1)) => "no report for 1 day".to_owned(),
            (Language::English, Some(days)) => format!("no report for {days} days"),
            (Language::Spanish, None) => "aún sin informes".to_owned(),
            (Language::Spanish, Some(0)) => "un informe en el último día".to_owned(),
            (Language::Spanish, Some(1)) => "sin informes desde hace 1 día".to_owned(),
            (Language::Spanish, Some(days)) => format!("sin informes desde hace {days} días"),
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
    hand_shared: "Handed to the app you chose. Send it there.", "Pasado a la app que eligió. Envíelo desde allí.";
    hand_cancelled: "Cancelled: nothing was sent or saved.", "Cancelado: no se envió ni se guardó nada.";
    hand_save_instead: "Save it as a file instead", "Guardarlo como archivo";
    hand_no_file: "Copy the text below, or use another browser: this one gives no file.", "Copie el texto de abajo o use otro navegador: este no da el archivo.";
    hand_text: "The file as text", "El archivo como texto";
    picture_hold: "Or press and hold the picture to save it.", "O mantenga pulsada la imagen para guardarla.";
    picture_refused: "Send the report instead: it holds the chart. This browser cannot draw the picture.", "Envíe el informe: lleva el gráfico. Este navegador no puede dibujar la imagen.";
    backup_check: "Open the file again to check it", "Abrir el archivo otra vez para comprobarlo";
    backup_check_hint: "A file counts as a backup once you have opened it here again.", "Un archivo cuenta como copia cuando lo ha abierto aquí otra vez.";
    backup_of_breeder: "Your details, your standing words and your templates are in it too.", "También lleva sus datos, lo que va en cada ficha y sus plantillas.";
    backup_lacks_words: "Save a new backup: your details or templates are not in this one as they are now.", "Guarde una copia nueva: esta no lleva sus datos o plantillas como están ahora.";
    breeder_in_backup: "Your details and templates", "Sus datos y plantillas";
    breeder_in_backup_own: "Details and standing words", "Datos y lo que va en cada ficha";
    breeder_in_backup_same: "As on this phone: nothing to change.", "Como en este teléfono: no hay nada que cambiar.";
    breeder_in_backup_stays: "Different on this phone, which stays as it is", "Distinto en este teléfono, que se queda como está";
    breeder_in_backup_use: "Use the backup's instead (what is right of the arrow)", "Usar lo de la copia (lo que está a la derecha de la flecha)";
    backup_is_card: "That is a card, not a backup.", "Eso es una ficha, no una copia.";
    exchange_copy_link: "Copy the link again", "Copiar el enlace otra vez";
    exchange_card: "Handover card", "Ficha de entrega";
    exchange_records: "Records", "Datos";
    exchange_anyone: "Anyone with it can read what it says.", "Quien lo tenga puede leer lo que dice.";
    take_another: "Paste another text or choose a file", "Pegar otro texto o elegir un archivo";
    exchange_take_plan: "Use the changed plan", "Usar el plan cambiado";
    exchange_no_change: "This plan is the same as the one you have.", "Este plan es igual al que ya tiene.";
    exchange_paste_hint: "On an iPhone a scanned link opens in Safari, which keeps separate records. Copy the link there. Open Perchlight from the home screen. Paste the link here.", "En un iPhone, un enlace escaneado se abre en Safari, que guarda los datos por separado. Copie allí el enlace. Abra Perchlight desde la pantalla de inicio. Pegue aquí el enlace.";
    exchange_too_long: "Send the file: it is too much for a link.", "Envíe el archivo: es demasiado para un enlace.";
    exchange_alert_on: "After the import, open one event and check that its alert is on: some calendars leave it out.", "Después de importar, abra un evento y compruebe que su aviso está activo: algunos calendarios lo quitan.";
    exchange_old_first: "After each change of the plan, open a new file: it replaces the old events. If feeds are listed twice, delete the old events.", "Después de cada cambio del plan, abra un archivo nuevo: sustituye los eventos antiguos. Si las tomas aparecen dos veces, borre los antiguos.";
    exchange_placed: "Placed chicks", "Polluelos entregados";
}
