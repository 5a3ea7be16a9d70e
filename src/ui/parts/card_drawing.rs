//! Plain line drawings of the cards of the first weeks, our own.

use leptos::prelude::*;

use crate::domain::homecoming::first_weeks::Picture;
use crate::ui::state::AppState;

impl Picture {
    /// Lines in ink.
    const fn ink(self) -> &'static str {
        match self {
            Self::Keel => {
                "M12 48C12 8 88 8 88 48M50 62V130M36 62H64M112 48C112 8 188 8 188 48M150 62V130M136 62H164M212 48C212 8 288 8 288 48M250 62V130M236 62H264"
            }
            Self::WarmSpot => {
                "M24 10H276V118H24zM142 104H236M152 104V118M226 104V118M43 34C43 27 53 27 53 34V60C60 65 57 77 48 77C39 77 36 65 43 60zM247 34C247 27 257 27 257 34V60C264 65 261 77 252 77C243 77 240 65 247 60zM205 32C199 20 180 22 178 40C177 54 168 62 166 80C165 92 158 104 150 114L160 116C168 108 176 104 182 98M201 58C211 68 212 90 196 100M205 32C222 31 229 46 219 62C217 55 211 52 203 52M203 52C202 59 207 63 213 60M180 60C174 76 178 92 168 108M184 100V108M194 100V108M193.500 40a1 1 0 1 0 1 0"
            }
            Self::Scale => {
                "M24 142L34 114H116L126 142zM40 106H110M36 70V106H114V70M174 142L184 114H266L276 142zM190 106H260M186 70V106H264V70M238 30C232 16 212 18 210 36C209 52 200 62 199 78C198 84 192 92 190 98M234 58C244 68 244 90 234 98M238 30C255 29 262 44 252 60C250 53 244 50 236 50M236 50C235 57 240 61 246 58M213 60C208 74 211 88 204 98M226.500 38a1 1 0 1 0 1 0"
            }
            Self::Holding => {
                "M40 142H260M106 142C96 112 104 88 124 76M194 142C204 112 196 88 176 76M124 74C112 62 112 8 150 8C188 8 188 62 176 74M150 26C139 26 133 36 135 47C137 57 145 62 150 73C155 62 163 57 165 47C167 36 161 26 150 26zM138 56C137 68 142 76 150 78C158 76 163 68 162 56M145 35h.1M155 35h.1M126.500 40a1 1 0 1 0 1 0M172.500 40a1 1 0 1 0 1 0M50 142C56 108 72 82 100 64C98 44 106 30 118 36M82 142C86 116 94 98 112 84M184 28C194 26 196 36 187 38M187 42C197 42 198 53 188 54"
            }
            Self::CropPlaces => {
                "M40 142H260M112 142C92 116 100 90 126 76M188 142C208 116 200 90 174 76M126 74C112 60 114 6 150 6C186 6 188 60 174 74M150 24C139 24 133 33 135 43C137 52 145 57 150 67C155 57 163 52 165 43C167 33 161 24 150 24zM138 52C137 63 142 70 150 72C158 70 163 63 162 52M145 32h.1M155 32h.1M126.500 37a1 1 0 1 0 1 0M172.500 37a1 1 0 1 0 1 0"
            }
        }
    }

    /// What matters, in the colour of the lamp.
    const fn lamp(self) -> &'static str {
        match self {
            Self::Keel => {
                "M12 48C16 92 42 70 50 130C58 70 84 92 88 48M112 48L150 130L188 48M212 48C206 96 226 132 250 132C274 132 294 96 288 48"
            }
            Self::WarmSpot => {
                "M24 132H146V142H24zM72 108C66 100 78 94 72 84M96 108C90 100 102 94 96 84M120 108C114 100 126 94 120 84"
            }
            Self::Scale => {
                "M75 120C66 120 66 136 75 136C84 136 84 120 75 120zM210 130h.1M225 130h.1M240 130h.1"
            }
            Self::Holding => "M288 96L224 80L168 64M188 60L168 64L180 80",
            Self::CropPlaces => {
                "M124 96C126 80 174 80 176 96C180 116 166 128 150 128C134 128 120 116 124 96zM278 122L186 112M200 104L186 112L198 122"
            }
        }
    }
}

/// The drawing of a card, told in words to those who do not see it.
#[component]
pub fn CardDrawing(
    /// What is drawn.
    picture: Picture,
) -> impl IntoView {
    let words = AppState::here().language().picture(picture);
    let parts = words
        .parts
        .iter()
        .map(|part| view! { <span>{*part}</span> });
    view! {
        <figure class="figure">
            <svg class="drawing" viewBox="0 0 300 150" role="img" aria-label=words.shows>
                <path class="drawing__ink" d=picture.ink()></path>
                <path class="drawing__lamp" d=picture.lamp()></path>
            </svg>
            <figcaption class="figure__parts hint">{parts.collect_view()}</figcaption>
        </figure>
    }
}
