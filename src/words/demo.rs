//! What the made-up chick's people have typed.

use crate::domain::journal::demo::Typed;
use crate::words::Language;

impl Language {
    /// The texts of the made-up chick.
    pub const fn demo_typed(self) -> Typed {
        Typed {
            ring: self.pick("EXAMPLE 01", "EJEMPLO 01"),
            breeder: self.pick("Example breeder", "Criador de ejemplo"),
            vet: self.pick("Example avian vet", "Veterinario de ejemplo"),
            solids: self.pick(
                "soaked pellets, cooked sweet potato, papaya",
                "pellets remojados, camote (boniato) cocido, papaya",
            ),
            food: self.pick("sweet potato", "camote (boniato)"),
            visit: self.pick("first visit, all well", "primera visita, todo bien"),
        }
    }
}
