//! What the made-up chick's people have typed.

use crate::domain::journal::demo::Typed;
use crate::words::Language;

impl Language {
    /// The texts of the made-up chick.
    pub const fn demo_typed(self) -> Typed {
        Typed {
            ring: self.pick("MADE UP 01", "INVENTADO 01"),
            breeder: self.pick("Made-up breeder", "Criador inventado"),
            vet: self.pick("Made-up avian vet", "Veterinario de aves inventado"),
            solids: self.pick(
                "soaked pellets, cooked sweet potato, papaya",
                "pienso remojado, boniato cocido, papaya",
            ),
            food: self.pick("sweet potato", "boniato"),
            visit: self.pick("first visit, all well", "primera visita, todo bien"),
        }
    }
}
