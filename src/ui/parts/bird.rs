//! A large parrot from the side with what its crop holds, our own drawing. The word beside it says the same.

use leptos::prelude::*;

use crate::domain::journal::entries::CropState;

/// Head, neck and chest down to the edge of the drawing; the crop makes the chest's outline.
const fn body(crop: CropState) -> &'static str {
    match crop {
        CropState::Flat => {
            "M37 118C40 98 50 84 52 68C54 42 60 17 84 17C94 17 101 22 103 29L99 62C92 70 91 78 94 86L103 118Z"
        }
        CropState::Trace => {
            "M37 118C40 98 50 84 52 68C54 42 60 17 84 17C94 17 101 22 103 29L99 62C93 69 91 75 93 81C100 85 107 91 107 100C107 108 102 112 101 112L103 118Z"
        }
        CropState::Quarter => {
            "M37 118C40 98 50 84 52 68C54 42 60 17 84 17C94 17 101 22 103 29L99 62C94 67 93 72 94 77C105 80 114 88 114 99C114 109 106 114 102 114L103 118Z"
        }
        CropState::HalfOrMore => {
            "M37 118C40 98 50 84 52 68C54 42 60 17 84 17C94 17 101 22 103 29L99 62C96 66 96 70 97 74C114 74 127 85 127 98C127 110 114 117 103 116L103 118Z"
        }
    }
}

/// The pouch where it is not full, as a dashed line.
const fn pouch(crop: CropState) -> &'static str {
    match crop {
        CropState::Flat => "M89 84C89 94 92 102 98 110",
        CropState::Trace => "M88 99C89 93 92 88 95 85C100 88 103 93 104 99",
        CropState::Quarter => "M85 98C86 91 92 84 97 81C105 85 109 91 110 98",
        CropState::HalfOrMore => "M86 88C89 83 94 80 98 79C107 80 115 84 119 88",
    }
}

/// The food in it.
const fn food(crop: CropState) -> &'static str {
    match crop {
        CropState::Flat => "",
        CropState::Trace => "M88 99H104C104 106 101 109 96 109C91 109 88 106 88 99Z",
        CropState::Quarter => "M85 98H110C110 106 104 111 98 111C91 111 85 106 85 98Z",
        CropState::HalfOrMore => {
            "M86 88H119C122 91 123 94 123 98C123 107 113 112 103 112C92 112 83 106 83 98C83 94 84 91 86 88Z"
        }
    }
}

/// The bird.
#[component]
pub fn Bird(
    /// What its crop holds.
    crop: CropState,
) -> impl IntoView {
    view! {
        <svg class="bird" viewBox="30 12 104 106" aria-hidden="true">
            <path class="bird__body" d=body(crop)></path>
            <path class="bird__wing" d="M49 118C51 106 57 96 64 89"></path>
            <path class="bird__face" d="M102 30C90 27 81 34 80 47C79 58 86 67 97 68L101 57C104 48 104 39 102 30Z"></path>
            <path class="bird__lines" d="M84 49C88 50 93 50 97 49M85 55C89 57 93 57 97 56M87 61C90 63 93 64 96 64"></path>
            <circle class="bird__eye" cx="90" cy="39" r="4"></circle>
            <path class="bird__beak" d="M102 29C117 27 127 38 126 52C125 61 121 68 117 73C116 63 110 57 101 57C104 48 104 38 102 29Z"></path>
            <path class="bird__jaw" d="M98 57C105 57 110 62 111 67C108 71 100 70 97 65C96 61 96 58 98 57Z"></path>
            <path class="bird__pouch" d=pouch(crop)></path>
            <path class="bird__food" d=food(crop)></path>
        </svg>
    }
}

/// The bird from the front, the tip of the tool coming from its left side and pointing to its right. The
/// sentence beside it says the same.
#[component]
pub fn BirdFront() -> impl IntoView {
    view! {
        <svg class="bird bird--front" viewBox="0 0 300 150" aria-hidden="true">
            <path class="bird__body" d="M150 4C106 4 80 34 80 76C80 108 68 130 58 150H242C232 130 220 108 220 76C220 34 194 4 150 4Z"></path>
            <path class="bird__face" d="M124 42C98 34 86 52 88 74C90 98 108 110 128 104C116 86 114 60 124 42ZM176 42C202 34 214 52 212 74C210 98 192 110 172 104C184 86 186 60 176 42Z"></path>
            <path class="bird__lines" d="M93 80C101 84 108 84 114 81M97 90C104 94 111 94 117 91M104 99C110 102 116 101 121 99M207 80C199 84 192 84 186 81M203 90C196 94 189 94 183 91M196 99C190 102 184 101 179 99"></path>
            <circle class="bird__eye" cx="104" cy="62" r="8"></circle>
            <circle class="bird__eye" cx="196" cy="62" r="8"></circle>
            <path class="bird__jaw" d="M122 92C122 124 138 136 150 136C162 136 178 124 178 92Z"></path>
            <path class="bird__beak" d="M150 30C126 30 112 48 114 70C116 92 136 100 150 126C164 100 184 92 186 70C188 48 174 30 150 30Z"></path>
            <path class="bird__ridge" d="M139 45h.1M161 45h.1M150 56V104"></path>
            <path class="bird__tool" d="M296 66L180 108M199 90L180 108L205 114"></path>
        </svg>
    }
}
