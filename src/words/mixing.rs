//! What the mix is reckoned with, and what a day of it holds.

use crate::domain::formula::day_energy::DayEnergy;
use crate::domain::formula::heat_balance::CupStuff;
use crate::domain::formula::mixing::{
    MixError, RecipeShare, SPOON_ML, SUPPLEMENT_G_PER_100_ML, TEN_SPOONS_G, WATER_PARTS,
    recipe_share,
};
use crate::domain::formula::nutrition::{
    FatNeed, SUPPLEMENT_CAP_G_PER_100_ML, SupplementCap, TOO_THICK_ABOVE, TOO_THIN_BELOW,
    Thickness, VOLUME_ABOVE_PCT, WANTED_FAT_PCT, fat_need, supplement_for_fat,
};
use crate::domain::formula::powder::{FAT_PCT, KCAL_PER_100_G, PROTEIN_PCT, Powder, PowderError};
use crate::domain::plan::species::Species;
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::units::{NumberError, parse_thousandths};
use crate::words::Language;
use crate::words::format::Writing;

texts! {
    mix_cup: "A cold cup cools the formula", "Un vaso frío enfría la papilla";
    mix_cup_mass: "Empty cup", "Vaso vacío";
    mix_cup_hint: "Weigh it once. Then the guide says how warm the mix starts.", "Péselo una vez. Así la guía dice a cuánto empieza la papilla.";
    mix_cup_stuff: "Made of", "Material";
    plan_water_hint: "Hotter than the formula is served: powder and cup cool it.", "Más caliente que la papilla que se da: el polvo y el vaso la enfrían.";
    plan_room_from: "Room from", "Habitación desde";
    plan_room_to: "Room up to", "Habitación hasta";
    plan_spoons: "Powder in ten level spoons", "Peso de diez cucharas rasas de papilla en polvo";
    plan_spoons_hint: "Weigh ten once, without the cup. Then the guide also tells you how many spoons.", "Pese diez una vez, sin el vaso. Así la guía le dirá también cuántas cucharas.";
    plan_spoon_ml: "One of these spoons holds", "Cada una de estas cucharas contiene";
    plan_spoon_ml_hint: "Only for a recipe by volume: a teaspoon holds 5 ml, a tablespoon 15 ml.", "Solo para una receta por volumen: una cucharita contiene 5 ml, una cuchara sopera 15 ml.";
    plan_recipe: "Recipe by volume: parts of water to 1 part of powder", "Receta por volumen: partes de agua por 1 de papilla en polvo";
    plan_recipe_hint: "Only if the breeder measures by spoon or cup.", "Solo si el criador mide con cuchara o vaso.";
    plan_wanted_fat: "Fat wanted in the dry part of the mix", "Grasa deseada en la parte seca de la papilla";
    plan_wanted_fat_hint: "Shows how much fat supplement that takes.", "Muestra cuánto suplemento graso hace falta.";
    plan_fat_needs_label: "First type fat and protein from the powder\u{2019}s label.", "Escriba antes la grasa y la proteína de la etiqueta de la papilla.";
    plan_fat_only_asked: "Only if your breeder or avian vet asks for it. Smooth, without salt, dissolved in the warm water.", "Solo si lo pide su criador o su veterinario. Sin trozos ni sal, disuelta en el agua tibia.";
    plan_fat_high_powder: "Ask before you add any: this powder is high in fat already.", "Pregunte antes de añadir más: esta papilla ya es rica en grasa.";
    plan_by_volume: "Is that parts by volume? One part of powder to two of water is only 17 to 20 % by weight. If the breeder measures by spoon or cup, type the parts of water under Recipe by volume.", "¿Son partes por volumen? Una parte de polvo por dos de agua es solo de 17 a 20 % en peso. Si el criador mide con cuchara o vaso, escriba las partes de agua en Receta por volumen.";
    recipe_thin: "Ask your breeder: that is thin for a feathered chick (below 18 %, our own limit).", "Pregunte a su criador: es muy líquida para un polluelo emplumado (menos del 18 %, valor propio).";
    recipe_thick: "Ask your breeder: that is thick (above 33 %, our own limit).", "Pregunte a su criador: es muy espesa (más del 33 %, valor propio).";
    plan_label_energy: "Powder label: energy in 100 g", "Etiqueta de la papilla: energía en 100 g";
    plan_label_fat: "Powder label: fat", "Etiqueta de la papilla: grasa";
    plan_label_protein: "Powder label: protein", "Etiqueta de la papilla: proteína";
}

impl Language {
    /// What a mix looks like.
    pub const fn thickness_look(self, thickness: Thickness) -> &'static str {
        match thickness {
            Thickness::Cream => self.pick("like cream", "como nata líquida"),
            Thickness::ThinYoghurt => self.pick("like thin yoghurt", "como yogur líquido"),
            Thickness::ApplePuree => self.pick(
                "like apple puree that drops off a spoon in blobs",
                "como puré de manzana que cae de la cuchara en gotas gruesas",
            ),
            Thickness::ThickPorridge => self.pick("like thick porridge", "como gachas espesas"),
        }
    }

    /// What a cup may be made of, in the order of the domain's list.
    pub fn cup_stuffs(self) -> Vec<&'static str> {
        let name = |stuff| match stuff {
            CupStuff::Plastic => self.pick("plastic", "plástico"),
            CupStuff::GlassOrChina => self.pick("glass or china", "vidrio o loza"),
            CupStuff::Steel => self.pick("steel", "acero"),
        };
        CupStuff::ALL.into_iter().map(name).collect()
    }
}

impl Writing {
    /// What is said beside a typed share of powder, in per cent by weight: how thick that looks, and whether
    /// parts by volume were typed. `None` before it is a number.
    pub fn powder_typed(self, powder: &str) -> Option<(String, Option<&'static str>)> {
        let pct = typed(powder)?.ok()?;
        let doubt = VOLUME_ABOVE_PCT < pct;
        let doubt = doubt.then(|| self.language.plan_by_volume());
        Some((self.powder_share(pct), doubt))
    }

    /// A share of powder in per cent by weight, and how thick that looks.
    pub fn powder_share(self, pct: f64) -> String {
        let look = self.language.thickness_look(Thickness::of(pct / 100.0));
        format!("{}: {look}", self.pct(pct))
    }

    /// What a day's feeds hold beside the textbook band: to see a slip, not to feed by.
    pub fn day_energy(self, day: DayEnergy) -> String {
        let (volume, kcal, (low, high)) = (self.volume(day.volume), day.kcal, day.growth_kcal);
        let powder = if day.has_label {
            self.language
                .pick("by the powder's label", "según la etiqueta de la papilla")
        } else {
            self.language
                .pick("with a usual powder", "con una papilla corriente")
        };
        match self.language {
            Language::English => format!(
                "The day's {volume} hold about {kcal}\u{a0}kcal {powder}; textbooks give {low}–{high} for growth. This checks plan and label. It is not an order: the chick and its crop decide."
            ),
            Language::Spanish => format!(
                "Los {volume} del día tienen unas {kcal}\u{a0}kcal {powder}; para crecer, los libros dan {low}–{high}. Sirve para revisar el plan y la etiqueta. No es una orden: deciden el polluelo y su buche."
            ),
        }
    }

    /// What a typed recipe by volume makes by weight: parts of water, and, where known, the weight of
    /// ten level spoons in g and what one holds in ml. `None` before any parts are typed.
    ///
    /// # Errors
    /// The sentence about the first figure that was not taken.
    pub fn recipe_typed(
        self,
        parts: &str,
        ten_spoons: &str,
        spoon_ml: &str,
    ) -> Option<Result<RecipeShare, String>> {
        let (parts, ten_spoons, spoon_ml) = (typed(parts)?, typed(ten_spoons), typed(spoon_ml));
        let weighed = ten_spoons.zip(spoon_ml).map(|(ten, one)| Ok((ten?, one?)));
        let figures = weighed
            .transpose()
            .and_then(|weighed| Ok((parts?, weighed)));
        Some(match figures {
            Ok((parts, weighed)) => {
                recipe_share(parts, weighed).map_err(|error| self.mix_error(error))
            }
            Err(error) => Err(self.number_error(error)),
        })
    }

    /// The same as a sentence.
    pub fn recipe(self, share: RecipeShare) -> String {
        let pct = |share: f64| self.pct(100.0 * share);
        match (self.language, share) {
            (Language::English, RecipeShare::Weighed(share)) => {
                format!(
                    "By weight that is {} powder.{}",
                    pct(share),
                    self.thickness(share)
                )
            }
            (Language::Spanish, RecipeShare::Weighed(share)) => {
                format!(
                    "En peso es un {} de polvo.{}",
                    pct(share),
                    self.thickness(share)
                )
            }
            (Language::English, RecipeShare::Between(light, heavy)) => format!(
                "By weight that is {} powder with a light powder and {} with a heavy one. For one figure, weigh ten level spoons and say what one holds.",
                pct(light),
                pct(heavy)
            ),
            (Language::Spanish, RecipeShare::Between(light, heavy)) => format!(
                "En peso es un {} de polvo si es ligero y un {} si es pesado. Para una sola cifra, pese diez cucharas rasas y diga cuánto contiene una.",
                pct(light),
                pct(heavy)
            ),
        }
    }

    fn thickness(self, share: f64) -> String {
        let remark = if share < TOO_THIN_BELOW {
            self.language.recipe_thin()
        } else if TOO_THICK_ABOVE < share {
            self.language.recipe_thick()
        } else {
            return String::new();
        };
        format!(" {remark}")
    }

    /// The act of taking a recipe's share, in tenths of per cent, into the plan.
    pub fn recipe_take(self, tenths: i32) -> String {
        let pct = self.pct(f64::from(tenths) / 10.0);
        match self.language {
            Language::English => format!("Use {pct} in the plan"),
            Language::Spanish => format!("Usar {pct} en el plan"),
        }
    }

    /// How much fat supplement a typed share of fat takes, in per cent of the dry part, with a powder
    /// of this label and share in the mix, in per cent. `None` before any share of fat is typed.
    ///
    /// # Errors
    /// The sentence about what was not taken, or that it cannot be reached.
    pub fn fat_typed(
        self,
        wanted: &str,
        (fat, protein): (&str, &str),
        powder: &str,
    ) -> Option<Result<String, String>> {
        let wanted = typed(wanted)?;
        let (Some(fat), Some(protein)) = (typed(fat), typed(protein)) else {
            return Some(Err(self.language.plan_fat_needs_label().to_owned()));
        };
        let powder = typed(powder).unwrap_or(Err(NumberError::Empty));
        let figures = wanted.and_then(|wanted| Ok((wanted, fat?, protein?, powder?)));
        Some(match figures {
            Ok((wanted_pct, fat_pct, protein_pct, powder_pct)) => {
                let powder =
                    Powder::of_label(protein_pct, fat_pct, Powder::USUAL.kcal_per_g * 100.0)
                        .map_err(|error| self.powder_error(error));
                powder.and_then(|powder| self.fat(wanted_pct, &powder, powder_pct / 100.0))
            }
            Err(error) => Err(self.number_error(error)),
        })
    }

    fn fat(self, wanted_pct: f64, powder: &Powder, share: f64) -> Result<String, String> {
        let need = supplement_for_fat(powder, share, wanted_pct);
        let need = need.map_err(|error| self.mix_error(error))?;
        // Downwards, so that no cap is passed.
        let grams = |g: f64| self.mass_of_food((g * 10.0).floor());
        let (wanted, reached) = (self.pct(wanted_pct), self.pct(need.fat_pct_of_dry_matter));
        let supplement = grams(need.g_per_100_ml);
        if let Some(cap) = need.capped_by {
            return Err(self.fat_out_of_reach(cap, &wanted, &supplement, &reached));
        }
        let say = self.language;
        if need.g_per_100_ml <= 0.0 {
            return Ok(match say {
                Language::English => {
                    format!("Nothing to add: the powder alone has {reached} fat in its dry part.")
                }
                Language::Spanish => {
                    format!(
                        "Nada que añadir: la papilla sola ya tiene un {reached} de grasa en su parte seca."
                    )
                }
            });
        }
        let answer = match say {
            Language::English => {
                format!("{wanted} takes about {supplement} of peanut butter in 100 ml of formula.")
            }
            Language::Spanish => {
                format!(
                    "Para un {wanted} hacen falta unos {supplement} de crema de cacahuete (maní) en 100 ml de papilla."
                )
            }
        };
        let more = if powder.is_high_fat() {
            say.plan_fat_high_powder()
        } else {
            ""
        };
        Ok(format!("{answer} {} {more}", say.plan_fat_only_asked())
            .trim_end()
            .to_owned())
    }

    fn fat_out_of_reach(
        self,
        cap: SupplementCap,
        wanted: &str,
        supplement: &str,
        reached: &str,
    ) -> String {
        let cap = match cap {
            SupplementCap::Volume => {
                let most = self.one_decimal(SUPPLEMENT_CAP_G_PER_100_ML);
                match self.language {
                    Language::English => format!("{most} g in 100 ml"),
                    Language::Spanish => format!("{most} g en 100 ml"),
                }
            }
            SupplementCap::DryMatter => self
                .language
                .pick("a tenth of the dry part", "una décima parte de lo seco")
                .to_owned(),
        };
        match self.language {
            Language::English => format!(
                "Ask your breeder about a powder with more fat: {wanted} cannot be reached with this one. {supplement} reach {reached}, and more supplement than {cap} (our own limit) slows the crop."
            ),
            Language::Spanish => format!(
                "Pregunte a su criador por una papilla con más grasa: con esta no se llega al {wanted}. {supplement} llegan al {reached}, y con más suplemento que {cap} (valor propio) el buche se vacía más despacio."
            ),
        }
    }

    fn mass_of_food(self, tenths: f64) -> String {
        format!("{}\u{a0}g", self.one_decimal(tenths / 10.0))
    }

    /// How much fat the chicks of a species usually get; `None` where nothing is known of it.
    pub fn fat_need(self, species: Species) -> Option<String> {
        let need = fat_need(species)?;
        let say = self.language;
        let words = match need.value {
            FatNeed::Most => say.pick(
                "one of the macaws whose chicks get the most fat",
                "uno de los guacamayos cuyos polluelos reciben más grasa",
            ),
            FatNeed::Middling => say.pick(
                "a macaw whose chicks get a middling amount of fat",
                "un guacamayo cuyos polluelos reciben una cantidad media de grasa",
            ),
            FatNeed::RegularToMedium => say.pick(
                "a macaw whose chicks get a regular to medium amount of fat",
                "un guacamayo cuyos polluelos reciben una cantidad de grasa entre normal y media",
            ),
        };
        let (species, standing) = (say.species(species), say.standing(need.standing));
        Some(match say {
            Language::English => format!(
                "{species}: {words}. Source: {standing}, breeders differ; more fat for macaws: Duerr & \
                 Gage 2020, p. 595. Your breeder decides."
            ),
            Language::Spanish => format!(
                "{species}: {words}. Fuente: {standing}, los criadores difieren; más grasa para los \
                 guacamayos: Duerr & Gage 2020, p. 595. Decide su criador."
            ),
        })
    }

    /// A part of the mix that was not taken, with the range it must lie in.
    pub fn mix_error(self, error: MixError) -> String {
        match error {
            MixError::TenSpoons { .. } => {
                let (low, high) = whole(TEN_SPOONS_G);
                match self.language {
                    Language::English => format!(
                        "Ten level spoons of powder weigh {low} to {high} g. Was it one spoon, or \
                         the cup too?"
                    ),
                    Language::Spanish => format!(
                        "Diez cucharas rasas de papilla en polvo pesan de {low} a {high} g. ¿Era una sola, o con el vaso?"
                    ),
                }
            }
            MixError::Supplement { .. } => {
                let (low, high) = whole(SUPPLEMENT_G_PER_100_ML);
                match self.language {
                    Language::English => {
                        format!("Type {low} to {high} g in 100 ml of formula. More fat only if a vet says so.")
                    }
                    Language::Spanish => {
                        format!("Escriba de {low} a {high} g en 100 ml de papilla. Más grasa, solo si lo dice un veterinario.")
                    }
                }
            }
            MixError::WantedFat { .. } => {
                let (low, high) = whole(WANTED_FAT_PCT);
                match self.language {
                    Language::English => {
                        format!("Type {low} to {high} % fat of the dry part.")
                    }
                    Language::Spanish => {
                        format!("Escriba de {low} a {high} % de grasa de la parte seca.")
                    }
                }
            }
            MixError::WaterParts { .. } => {
                let (low, high) = WATER_PARTS;
                let (low, high) = (self.one_decimal(low), rounded(high));
                match self.language {
                    Language::English => format!("Type {low} to {high} parts of water."),
                    Language::Spanish => {
                        format!("Escriba de {low} a {high} partes de agua.")
                    }
                }
            }
            MixError::Spoon { .. } => {
                let (low, high) = whole(SPOON_ML);
                match self.language {
                    Language::English => format!("Type {low} to {high} ml for a spoon."),
                    Language::Spanish => format!("Escriba de {low} a {high} ml para una cuchara."),
                }
            }
            MixError::BulkDensity { .. } => self
                .language
                .pick(
                    "Ten spoons of this size cannot weigh that. Were they level, and without the cup?",
                    "Diez cucharas de este tamaño no pueden pesar eso. ¿Eran rasas y sin el vaso?",
                )
                .to_owned(),
            MixError::Volume { .. }
            | MixError::Allowance { .. }
            | MixError::PowderShare { .. }
            | MixError::NoPowder { .. }
            | MixError::NoWater { .. } => self
                .language
                .pick(
                    "Check the numbers of the plan: this cannot be mixed.",
                    "Revise los números del plan: esto no se puede preparar.",
                )
                .to_owned(),
        }
    }

    /// A label that is no powder's.
    pub fn powder_error(self, error: PowderError) -> String {
        let (name, range, unit) = match error {
            PowderError::Energy { .. } => (
                self.language.pick("energy", "energía"),
                KCAL_PER_100_G,
                self.language.pick(
                    "kcal in 100 g; 4.2 kJ are 1 kcal",
                    "kcal en 100 g; 4,2 kJ son 1 kcal",
                ),
            ),
            PowderError::Fat { .. } => (self.language.pick("fat", "grasa"), FAT_PCT, "%"),
            PowderError::Protein { .. } => {
                (self.language.pick("protein", "proteína"), PROTEIN_PCT, "%")
            }
        };
        let (low, high) = whole(range);
        match self.language {
            Language::English => {
                format!("Check the label: {name} is from {low} to {high} {unit}.")
            }
            Language::Spanish => {
                format!("Revise la etiqueta: {name}, de {low} a {high} {unit}.")
            }
        }
    }
}

fn whole((low, high): (f64, f64)) -> (i32, i32) {
    (rounded(low), rounded(high))
}

/// A number typed in a field, to a thousandth; `None` for an empty field.
fn typed(text: &str) -> Option<Result<f64, NumberError>> {
    let text = text.trim();
    (!text.is_empty()).then(|| {
        let thousandths = i32::try_from(parse_thousandths(text)?);
        let thousandths = thousandths.ok().ok_or(NumberError::NotANumber)?;
        Ok(f64::from(thousandths) / 1_000.0)
    })
}

#[cfg(test)]
mod tests {
    use crate::words::mixing::*;

    const ENGLISH: Writing = Writing::metric(Language::English);

    fn plain(text: &str) -> String {
        text.replace('\u{a0}', " ")
    }

    fn recipe(parts: &str, ten_spoons: &str, spoon_ml: &str) -> Option<Result<String, String>> {
        let share = ENGLISH.recipe_typed(parts, ten_spoons, spoon_ml)?;
        Some(share.map(|share| plain(&ENGLISH.recipe(share))))
    }

    #[test]
    fn a_share_above_30_per_cent_is_asked_about_and_every_share_has_its_look() {
        let typed = |text| {
            let (look, doubt) = ENGLISH.powder_typed(text)?;
            Some((plain(&look), doubt.is_some()))
        };
        assert_eq!(typed(""), None);
        let porridge = |pct: &str| format!("{pct} %: like thick porridge");
        assert_eq!(typed("29.9"), Some((porridge("29.9"), false)));
        assert_eq!(typed("30"), Some((porridge("30.0"), false)));
        assert_eq!(typed("30.1"), Some((porridge("30.1"), true)));
        assert_eq!(typed("33"), Some((porridge("33.0"), true)));
    }

    #[test]
    fn a_typed_recipe_is_told_by_weight() {
        assert_eq!(recipe(" ", "75", "15"), None);
        // 75 g in 150 ml are 0.5 g/ml: 0.5 / 2.5.
        let weighed = "By weight that is 20.0 % powder.";
        assert_eq!(recipe("2", "75", "15"), Some(Ok(weighed.to_owned())));
        // 0.5 / 3.5 = 14.3 %, below 18; 0.5 / 1.5 = 33.3 %, above 33.
        assert!(
            recipe("3", "75", "15")
                .unwrap()
                .unwrap()
                .starts_with("By weight that is 14.3 % powder. Ask your breeder: that is thin")
        );
        assert!(
            recipe("1", "75", "15")
                .unwrap()
                .unwrap()
                .starts_with("By weight that is 33.3 % powder. Ask your breeder: that is thick")
        );
        // 0.5 / 1.75 = 28.6: a quarter of a part is not rounded away.
        let quarter = recipe("1,25", "75", "15").unwrap().unwrap();
        assert!(quarter.contains("28.6 %"), "{quarter}");
        // Not weighed: 0.38 / 2.38 and 0.60 / 2.60.
        for (ten_spoons, spoon_ml) in [("", ""), ("75", ""), ("", "15")] {
            let range = recipe("2", ten_spoons, spoon_ml).unwrap().unwrap();
            assert!(
                range.contains("16.0 % powder with a light powder and 23.1 %"),
                "{range}"
            );
        }
    }

    #[test]
    fn a_recipe_that_is_none_says_which_figure_it_is() {
        for (parts, ten_spoons, spoon_ml, words) in [
            ("13", "75", "15", "0.5 to 12 parts of water"),
            ("2", "7", "15", "Ten level spoons"),
            ("2", "75", "1", "2 to 50 ml for a spoon"),
            ("2", "75", "5", "Ten spoons of this size"),
        ] {
            let fault = recipe(parts, ten_spoons, spoon_ml).unwrap().unwrap_err();
            assert!(fault.contains(words), "{fault}");
        }
        assert!(recipe("two", "75", "15").unwrap().is_err());
    }

    fn fat(wanted: &str, label: (&str, &str), powder: &str) -> Option<Result<String, String>> {
        let answer = ENGLISH.fat_typed(wanted, label, powder)?;
        Some(answer.map(|text| plain(&text)).map_err(|text| plain(&text)))
    }

    #[test]
    fn a_wanted_share_of_fat_is_told_in_grams() {
        assert_eq!(fat("", ("12", "20"), "25"), None);
        // 26.55 g powder in 100 ml at 25 %: 24.16 g dry with 3.186 g fat. Supplement of 51.36 % fat and
        // 98.77 % dry: (0.15 x 24.16 - 3.186) / (0.5136 - 0.15 x 0.9877) = 1.198, downwards 1.1 g.
        let answer = fat("15", ("12", "20"), "25").unwrap().unwrap();
        assert!(
            answer.starts_with("15.0 % takes about 1.1 g of peanut butter in 100 ml"),
            "{answer}"
        );
        assert!(
            answer.contains("Only if your breeder or avian vet asks for it"),
            "{answer}"
        );
        // 12 of 91 is 13.19 %.
        let none = fat("13", ("12", "20"), "25").unwrap().unwrap();
        assert!(
            none.starts_with("Nothing to add: the powder alone has 13.2 % fat"),
            "{none}"
        );
        let rich = fat("17", ("15", "20"), "25").unwrap().unwrap();
        assert!(rich.contains("high in fat already"), "{rich}");
    }

    #[test]
    fn a_share_of_fat_out_of_reach_is_refused_with_what_can_be_reached() {
        // 2.5 g: (3.186 + 2.5 x 0.5136) / (24.16 + 2.5 x 0.9877) = 16.8 %.
        let far = fat("25", ("12", "20"), "25").unwrap().unwrap_err();
        assert!(
            far.contains("cannot be reached") && far.contains("2.5 g in 100 ml (our own limit)"),
            "{far}"
        );
        assert!(far.contains("2.5 g reach 16.8 %"), "{far}");
        let thin = fat("25", ("12", "20"), "20").unwrap().unwrap_err();
        assert!(
            thin.contains("a tenth of the dry part (our own limit)"),
            "{thin}"
        );
        let no_label = fat("15", ("12", ""), "25").unwrap().unwrap_err();
        assert!(no_label.contains("powder\u{2019}s label"), "{no_label}");
        let wanted = fat("50", ("12", "20"), "25").unwrap().unwrap_err();
        assert!(wanted.contains("1 to 40 % fat"), "{wanted}");
    }

    #[test]
    fn the_three_fattest_fed_macaws_are_named_and_others_are_not() {
        use crate::domain::plan::species::Species;
        let most = |species: Species| {
            let need = ENGLISH.fat_need(species);
            need.is_some_and(|need| need.contains("the most fat") && need.contains("p. 595"))
        };
        let named: Vec<Species> = Species::ALL.into_iter().filter(|one| most(*one)).collect();
        assert_eq!(named.len(), 3);
        for species in [
            Species::GreenWingedMacaw,
            Species::GreatGreenMacaw,
            Species::HyacinthMacaw,
        ] {
            assert!(named.contains(&species));
        }
        assert_eq!(ENGLISH.fat_need(Species::Cockatiel), None);
    }
}
